#declare S = 26;
#include "studio.inc"
Backwall(<.62, .60, .56>, <0, 0, 0>)
box { <-60, -40, -.35> <60, 9, .1> CreamTile(0) translate <0, -1.2, 0> }
union { RB(<-19, 0, -9.5>, <19, 1.4, 0>, .12) Oak(2, 0) }
#macro Bracket(X) union { cylinder { <X, -.2, 0> <X, -.2, -8.6> .26 } sphere { <X, -.2, -8.6> .36 } cylinder { <X, -5.4, -.3> <X, -.1, -.3> .26 } sphere { <X, -5.5, -.3> .34 } cylinder { <X, -4.6, -.3> <X, -.3, -6.2> .2 } texture { Brass } } #end
Bracket(-14) Bracket(14)
#macro Bowl(X, Y, Z, r, h, T) lathe { cubic_spline 9, <-.2, 0>, <0, 0>, <r * .45, .02>, <r * .86, h * .45>, <r, h>, <r * .95, h>, <r * .8, h * .48>, <0, .25>, <-.2, .25> sturm translate <X, Y, Z> texture { T } } #end
#declare Slip = Lacquer(<.60, .56, .48>) #declare Blue = Enamel(<.10, .15, .21>)
#declare k = 0; #while (k < 4) Bowl(-9, 1.42 + k * .72, -5, 3.4, 2.1, Porcelain) #declare k = k + 1; #end
Bowl(-2, 1.42, -5.2, 2.6, 2.9, Slip)
#macro Cup(X, Z, T) union { difference { cylinder { <X, 1.4, Z> <X, 5, Z> 1.55 } cylinder { <X, 1.7, Z> <X, 6, Z> 1.42 } } torus { 1.48, .08 translate <X, 5, Z> } torus { .95, .18 rotate x * 90 translate <X + 1.9, 3.3, Z> } texture { T } } #end
Cup(4.2, -4.6, Blue) Cup(8.8, -5.4, Porcelain)
lathe { cubic_spline 10, <-.3, 0>, <0, 0>, <1.9, .05>, <2.6, 2.6>, <2.1, 5.4>, <.8, 7.2>, <.85, 8.4>, <1.05, 8.9>, <.7, 8.9>, <.5, 8.4> sturm translate <14, 1.4, -4.8> Enamel(<.16, .24, .19>) }
Shot(<0, 1.6, -4>, 72, -20, 9, 30)
