in vec3 from_eye;
in vec3 where;
in float cover;
flat in vec3 sun_here;
out vec4 colour;
uniform sampler2DArray pictures;

void main() {
  vec4 texel = texture(pictures, where);
  if (texel.a < 0.01) discard;
  vec2 lean = texel.rg * 2.0 - 1.0;
  vec3 normal = vec3(lean, sqrt(max(0.05, 1.0 - dot(lean, lean))));
  float sunny = clamp(0.42 + 0.58 * dot(normal, sun_here), 0.0, 1.0);
  // Thin edges before the sun shine.
  float through = (1.0 - texel.a) * max(-sun_here.z, 0.0);
  vec3 light = sky.rgb * (0.50 + 0.55 * texel.b) + sun.rgb * (0.62 * sunny * (0.35 + 0.65 * texel.b) + 0.35 * through);
  // Far off they fade into the sky behind them, not into the darker haze of the ground.
  float distance = length(from_eye);
  vec3 behind = mix(horizon.rgb, zenith.rgb, 0.12);
  colour = vec4(shown(mix(behind, light * 0.95, exp(-0.8 * haze.w * distance))), texel.a * cover);
}
