out vec3 ray;

void main() {
  // One triangle over the whole picture, at the far end of the depths.
  vec2 corner = vec2(gl_VertexID == 1 ? 3.0 : -1.0, gl_VertexID == 2 ? 3.0 : -1.0);
  ray = ray_ahead.xyz + corner.x * ray_right.xyz + corner.y * ray_up.xyz;
  gl_Position = vec4(corner, 1.0, 1.0);
}
