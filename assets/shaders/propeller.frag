in vec2 at;
out vec4 colour;
uniform vec4 disc;
uniform vec2 turning;  // place of the first blade, turns; how far a blade moves while the eye gathers light, turns
const float kChord_m = 0.125;

void main() {
  float radius = length(at);
  if (radius > 1.0) discard;
  float turn = atan(at.y, at.x) / 6.2831853;
  // Two blades: everything in shares of half a turn, from the middle of the nearest blade.
  float share = fract(2.0 * (turn - turning.x));
  float away = min(share, 1.0 - share);
  float chord = kChord_m * (1.0 - 0.45 * radius * radius);
  float half_blade = chord / (6.2831853 * max(radius, 0.08) * disc.w);
  float smear = clamp(2.0 * turning.y, 0.004, 1.0);
  float cover = clamp((min(away + half_blade, 0.5 * smear) - max(away - half_blade, -0.5 * smear)) / smear, 0.0, 1.0);
  // Tips are painted pale.
  vec3 paint = mix(vec3(0.030, 0.029, 0.027), vec3(0.55, 0.50, 0.36), smoothstep(0.915, 0.925, radius));
  float rim = clamp((1.0 - radius) / max(fwidth(radius), 1e-5), 0.0, 1.0);
  colour = vec4(shown(paint * (sky.rgb + 0.6 * sun.rgb)), cover * rim * 0.92);
}
