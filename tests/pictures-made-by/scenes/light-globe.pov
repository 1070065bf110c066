#declare S = 12;
#include "studio.inc"
plane { y, 0 pigment { rgb <.58, .57, .54> } finish { ambient 0 diffuse .82 } normal { bumps .03 scale .12 } rotate x * 180 translate y * 9 }
Panels(<0, 0, 0>) light_source { <-26, -2, -30> rgb <1, .96, .9> * .5 area_light x * 14, y * 14, 6, 6 adaptive 1 jitter circular orient }
plane { y, -60 pigment { rgb <.4, .38, .35> } }
plane { z, 90 pigment { rgb <.52, .51, .48> } rotate y * 0 translate z * 0 inverse }
union { cylinder { <0, 9, 0> <0, 8.3, 0> 2.9 } torus { 2.8, .16 translate y * 8.3 } cylinder { <0, 8.3, 0> <0, 6.6, 0> 1.9 } torus { 1.9, .12 translate y * 6.7 } torus { 2.0, .1 translate y * 7.4 } texture { Chrome } }
sphere { <0, 2.4, 0> 4.8 texture { pigment { rgb <.95, .92, .86> } finish { ambient 0 diffuse .45 emission .40 * <1, .93, .80> specular .3 roughness .008 reflection { .01, .5 fresnel on } } } no_shadow }
light_source { <0, 2.4, 0> rgb <1, .86, .66> * 1.1 fade_distance 9 fade_power 2 area_light x * 6, z * 6, 4, 4 jitter adaptive 1 }
light_source { <10, -50, -60> rgb <1, .98, .95> * .30 shadowless }
Shot(<0, 3.4, 0>, 38, -20, -13, 28)
