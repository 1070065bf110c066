#declare S = 16;
#include "studio.inc"
Sweep(<.36, .35, .335>)
union { lathe { cubic_spline 11, <2.4, 7.0>, <2.4, 6.2>, <3.0, 5.4>, <5.4, 4.2>, <7.0, 2.0>, <7.0, -.8>, <5.2, -3.6>, <2.6, -4.9>, <.6, -5.2>, <0, -5.2>, <-.6, -5.2> sturm } texture { pigment { rgb <.95, .92, .85> } finish { ambient 0 diffuse .5 emission .20 * <1, .95, .86> specular .25 roughness .01 reflection { .01, .4 fresnel on } } } translate y * 9 }
light_source { <0, 9, 0> rgb <1, .85, .62> * .12 fade_distance 16 fade_power 2 shadowless }
union { cylinder { <0, 15, 0> <0, 16.6, 0> 2.7 } torus { 2.6, .16 translate <0, 15.1, 0> } cone { <0, 16.6, 0> 2.6 <0, 17.8, 0> 1.0 } cylinder { <0, 17.6, 0> <0, 19.6, 0> .7 } sphere { <0, 19.7, 0> .72 } cylinder { <0, 19, 0> <0, 60, 0> .26 } texture { Brass } }
Shot(<0, 13.2, 0>, 50, -18, 3, 29)
