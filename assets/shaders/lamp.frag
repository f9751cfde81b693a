in float seen;
out vec4 colour;

void main() {
  float away = length(gl_PointCoord - 0.5) * 2.0;
  colour = vec4(1.0, 0.95, 0.80, seen * (1.0 - smoothstep(0.5, 1.0, away)));
}
