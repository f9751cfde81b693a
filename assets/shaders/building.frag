in vec3 from_eye;
in vec3 light;
out vec4 colour;

void main() { colour = vec4(shown(fogged(light, from_eye)), 1.0); }
