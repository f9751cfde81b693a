uniform vec4 disc;  // middle, B; radius, m
out vec2 at;

void main() {
  at = vec2(gl_VertexID % 2 == 0 ? -1.0 : 1.0, gl_VertexID < 2 ? -1.0 : 1.0);
  gl_Position = clip_from_B * vec4(disc.x, disc.y + at.x * disc.w, disc.z + at.y * disc.w, 1.0);
}
