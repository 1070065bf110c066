#declare S = 15;
#include "studio.inc"
Sweep(<.46, .45, .43>)
union { lathe { cubic_spline 12, <-.4, 0>, <0, 0>, <2.9, .1>, <3.5, .7>, <3.7, 3>, <3.75, 6.6>, <3.2, 7.6>, <3.3, 8.4>, <2.9, 10>, <2.2, 10.6>, <0, 10.6>, <-.4, 10.6> sturm } texture { pigment { rgb <.035, .037, .04> } finish { ambient 0 diffuse .75 specular .35 roughness .03 reflection { .01, .2 fresnel on } } } }
union { cylinder { <0, 3.0, 0> <0, 6.4, 0> 3.86 texture { SteelV } } torus { 3.8, .1 translate <0, 3.0, 0> texture { Chrome } } torus { 3.8, .1 translate <0, 6.4, 0> texture { Chrome } } }
union { cylinder { <0, 10.5, 0> <0, 11.1, 0> 2.5 } cylinder { <0, 11, 0> <0, 11.9, 0> 1.8 } torus { 2.4, .16 translate <0, 10.7, 0> } cylinder { <0, 11.8, 0> <0, 12.1, 0> 2.2 } torus { 2.2, .13 translate <0, 12.1, 0> } texture { Chrome } }
cylinder { <0, 12.05, 0> <0, 12.16, 0> 1.7 texture { Rubber } }
#declare k = 0; #while (k < 3) union { box { <-.3, 10.7, -3.1> <.3, 11.05, -2.2> } rotate y * (k * 120 + 30) texture { Chrome } } #declare k = k + 1; #end
#declare PA = array[3] { <2.4, 8.6, -1>, <5.6, 8.6, -2.2>, <5.6, 5.8, -2.2> }
union { Pipe(PA, 1.2, .8) cylinder { <5.6, 6.3, -2.2> <5.6, 5.6, -2.2> 1.0 } texture { Rubber } }
union { RB(<-1.4, 4.1, -3.95>, <1.4, 5.3, -3.7>, .06) Enamel(<.30, .30, .30>) }
Shot(<.6, 5.9, 0>, 39, -22, 15, 27)
