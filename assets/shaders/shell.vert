layout(location = 0) in vec3 place;  // B, from the eye
layout(location = 1) in vec3 normal;
layout(location = 2) in vec3 paint;
layout(location = 3) in float across;
out vec3 light;
out float to_edge;

void main() {
  light = paint * paint * lit(normal, to_sun_B.xyz);
  to_edge = across;
  gl_Position = clip_from_B * vec4(place, 1.0);
}
