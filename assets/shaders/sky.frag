in vec3 ray;
out vec4 colour;

void main() {
  vec3 direction = normalize(ray);
  float up = -direction.z;
  float toward = max(dot(direction, to_sun.xyz), 0.0);
  vec3 sky_here = mix(zenith.rgb, horizon.rgb, exp(-max(up, 0.0) * 4.2));
  float wide = toward * toward;
  wide *= wide;
  sky_here += glow.rgb * (0.5 * wide * wide + 0.55 * pow(toward, 160.0)) * exp(-max(up, 0.0) * 1.5);
  // The sun's disc, drawn somewhat larger than its half degree.
  sky_here += sun.rgb * smoothstep(0.99994, 0.99997, toward) * 1.6 * to_sun.w;
  // Level with the eye the haze ends: the edge by which pitch and bank are held.
  float edge = clamp(0.5 + up / max(fwidth(up), 1e-6), 0.0, 1.0);
  colour = vec4(shown(mix(haze_towards(direction), sky_here, edge)), 1.0);
}
