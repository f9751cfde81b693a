uniform vec3 pole;  // its foot from the eye: north, east; height of the eye over it
uniform vec2 wind;  // m/s, where it blows to
out vec3 from_eye;
out vec3 paint;
const float kPole_m = 6.5, kSock_m = 4.2;

void main() {
  // The first strip is the pole, the other five the sock's bands; each faces the eye.
  int strip = gl_VertexID / 6;
  int corner = int[6](0, 1, 3, 0, 3, 2)[gl_VertexID % 6];
  float side = corner % 2 == 0 ? -1.0 : 1.0, end = corner / 2;
  float speed = length(wind);
  // Level from 15 kt, as windsocks are made (common practice); hanging in calm.
  float lift = clamp(speed / 7.7, 0.0, 1.0) * 1.5;
  vec2 level = speed > 0.1 ? wind / speed : vec2(1.0, 0.0);
  vec3 axis = vec3(level * sin(lift), cos(lift));
  vec3 foot = vec3(pole.xy, pole.z), top = foot - vec3(0.0, 0.0, kPole_m);
  vec3 from = foot, to = top;
  float width = 0.16;
  if (strip > 0) {
    float share = (float(strip - 1) + end) / 5.0;
    from = to = top + axis * kSock_m * share;
    width = mix(1.0, 0.5, share);
  }
  vec3 along = strip > 0 ? axis : vec3(0.0, 0.0, -1.0);
  vec3 right = normalize(cross(along, top) + vec3(1e-4, 0.0, 0.0));
  from_eye = (strip > 0 ? from : mix(from, to, end)) + right * (0.5 * width * side);
  vec3 band = strip % 2 == 1 ? vec3(0.80, 0.42, 0.16) : vec3(0.86, 0.85, 0.82);
  paint = strip == 0 ? vec3(0.75) : band;
  gl_Position = clip_from_E * vec4(from_eye, 1.0);
}
