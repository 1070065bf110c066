#declare S = 14;
#include "studio.inc"
Sweep(<.30, .295, .285>)
// a ribbed bell of pale glass round a small lamp
lathe { cubic_spline 10, <1.3, 8.8>, <1.5, 8.4>, <2.0, 7.2>, <3.3, 6.2>, <4.6, 4.0>, <5.4, 1.2>, <5.9, -1.2>, <6.0, -2>, <6.0, -2.3>, <6.0, -2.5> sturm
  texture { pigment { radial frequency 48 color_map { [0 rgbt <.80, .90, .85, .35>] [.35 rgbt <.97, .99, .98, .86>] [.65 rgbt <.97, .99, .98, .86>] [1 rgbt <.80, .90, .85, .35>] } }
    finish { ambient 0 diffuse .30 specular .7 roughness .004 reflection { .04, .5 } } normal { radial 1.6 frequency 48 sine_wave } } translate y * 6 }
torus { 6.0, .13 translate y * 3.7 texture { pigment { rgbt <.9, .96, .93, .4> } finish { ambient 0 diffuse .3 specular .8 roughness .004 reflection .15 } } }
sphere { <0, 10.2, 0> 1.45 texture { pigment { rgb 1 } finish { ambient 0 diffuse .3 emission 1.3 * <1, .86, .62> } } no_shadow }
light_source { <0, 10, 0> rgb <1, .82, .58> * .35 fade_distance 9 fade_power 2 shadowless }
union { cylinder { <0, 11.3, 0> <0, 13.0, 0> .85 } cylinder { <0, 13.2, 0> <0, 14.8, 0> 1.75 } torus { 1.7, .12 translate <0, 13.3, 0> } torus { 1.7, .1 translate <0, 14.8, 0> } cone { <0, 14.8, 0> 1.7 <0, 15.8, 0> .5 } cylinder { <0, 15.6, 0> <0, 60, 0> .14 } texture { Brass } }
Shot(<0, 10.2, 0>, 44, -16, 1, 27)
