in vec3 from_eye;
in vec3 paint;
out vec4 colour;

void main() { colour = vec4(shown(fogged(paint * paint * (sky.rgb + 0.6 * sun.rgb), from_eye)), 1.0); }
