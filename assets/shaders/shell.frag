in vec3 light;
in float to_edge;
out vec4 colour;

void main() {
  // A bar's edge is smooth over the width of a picture element.
  float cover = clamp((1.0 - abs(to_edge)) / max(fwidth(to_edge), 1e-5), 0.0, 1.0);
  colour = vec4(shown(light), cover);
}
