layout(location = 0) in vec2 place;  // along and across, from the runway's middle
uniform vec4 lamps;                  // the runway's middle from the eye: north, east, down; size of a lamp, px
out float seen;

void main() {
  vec2 level = lamps.xy + runway.zw * place.x + vec2(-runway.w, runway.z) * place.y;
  vec3 from_eye = vec3(level, lamps.z - 0.4);
  seen = exp(-haze.w * length(from_eye)) * mix(1.0, 0.55, clamp(-to_sun.z * 4.0, 0.0, 1.0));
  gl_Position = clip_from_E * vec4(from_eye, 1.0);
  gl_PointSize = lamps.w * clamp(700.0 / length(from_eye), 0.75, 2.2);
}
