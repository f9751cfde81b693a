in vec3 from_eye;
in vec2 at;
in float tint;
flat in vec3 sun_here;
out vec4 colour;
uniform sampler2D grain;

void main() {
  vec2 leaf = texture(grain, at * 0.09 + tint * 7.3).rg - 0.5;
  float out_here = dot(at, at) + 1.1 * leaf.x;
  if (out_here > 0.92) discard;
  vec3 normal = normalize(vec3(at + 1.2 * leaf, sqrt(max(0.1, 1.0 - dot(at, at)))));
  vec3 paint = mix(vec3(0.215, 0.310, 0.170), vec3(0.335, 0.395, 0.205), tint) * (1.0 + 0.9 * leaf.y);
  float low = 0.62 + 0.38 * clamp(0.5 + 0.5 * at.y, 0.0, 1.0);
  vec3 light = paint * paint * (sky.rgb * low + sun.rgb * max(dot(normal, sun_here), 0.0));
  colour = vec4(shown(fogged(light, from_eye)), 1.0);
}
