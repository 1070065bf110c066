#declare S = 14;
#include "studio.inc"
Backwall(<.50, .49, .46>, <0, 0, 0>)
union { cylinder { <0, -3, 0> <0, -3, -.5> 2.4 } torus { 2.3, .14 rotate x * 90 translate <0, -3, -.5> } cylinder { <0, -3, -.5> <0, -3, -1.1> 1.0 } 
  #declare PA = array[3] { <0, -3, -.6>, <0, -3, -4.6>, <0, 1, -4.6> } Pipe(PA, 1.6, .28) cylinder { <0, .2, -4.6> <0, 1.5, -4.6> .8 } torus { .8, .09 translate <0, .4, -4.6> } cone { <0, 1.3, -4.6> .8 <0, 1.9, -4.6> 1.9 } torus { 1.88, .1 translate <0, 1.9, -4.6> } texture { Nickel } }
lathe { cubic_spline 9, <1.2, 1.2>, <1.7, 1.9>, <2.5, 2.8>, <2.9, 4.6>, <2.9, 7.0>, <2.6, 8.2>, <2.3, 8.9>, <2.2, 9.0>, <2.1, 9.0> sturm translate z * -4.6
  texture { pigment { rgb <.95, .92, .85> } finish { ambient 0 diffuse .5 emission .42 * <1, .92, .78> specular .25 roughness .01 reflection { .01, .4 fresnel on } } } no_shadow }
light_source { <0, 5.4, -4.6> rgb <1, .80, .54> * .55 fade_distance 8 fade_power 2 area_light x * 3, y * 5, 3, 3 jitter }
Shot(<0, 2.6, -3>, 45, -28, 4, 27)
