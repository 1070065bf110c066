#declare S = 36;
#include "studio.inc"
Backwall(<.56, .545, .51>, <0, 8, 0>)
box { <-80, -60, -.35> <80, -5.6, .1> CreamTile(0) }
// a mantle hood: a canopy that sweeps in as it rises, a band and a rail at its foot
#macro Ring(q) <8.2 + 10 * pow(1 - q, 2.3), -6 + 44 * q, 8.5 + 11 * pow(1 - q, 2.3)> #end
#declare N = 40;
mesh {
  #declare k = 0; #while (k < N)
    #local a = Ring(k / N); #local b = Ring((k + 1) / N);
    triangle { <-a.x, a.y, -a.z> <a.x, a.y, -a.z> <b.x, b.y, -b.z> } triangle { <-a.x, a.y, -a.z> <b.x, b.y, -b.z> <-b.x, b.y, -b.z> }
    triangle { <-a.x, a.y, -a.z> <-b.x, b.y, -b.z> <-b.x, b.y, 0> } triangle { <-a.x, a.y, -a.z> <-b.x, b.y, 0> <-a.x, a.y, 0> }
    triangle { <a.x, a.y, -a.z> <b.x, b.y, -b.z> <b.x, b.y, 0> } triangle { <a.x, a.y, -a.z> <b.x, b.y, 0> <a.x, a.y, 0> }
    #declare k = k + 1; #end
  texture { BrassAged } }
union { RB(<-18.4, -9.4, -20>, <18.4, -5.9, 0>, .1) texture { BrassAged } }
union { cylinder { <-18.5, -6.2, -20.1> <18.5, -6.2, -20.1> .3 } cylinder { <-18.5, -6.2, -20.1> <-18.5, -6.2, 0> .3 } cylinder { <18.5, -6.2, -20.1> <18.5, -6.2, 0> .3 }
  cylinder { <-18.5, -9.2, -20.1> <18.5, -9.2, -20.1> .22 } cylinder { <-18.5, -9.2, -20.1> <-18.5, -9.2, 0> .22 } cylinder { <18.5, -9.2, -20.1> <18.5, -9.2, 0> .22 }
  sphere { <-18.5, -6.2, -20.1> .3 } sphere { <18.5, -6.2, -20.1> .3 } sphere { <-18.5, -9.2, -20.1> .22 } sphere { <18.5, -9.2, -20.1> .22 } texture { Brass } }
#declare k = 0; #while (k < 13) sphere { <-17.4 + k * 2.9, -7.7, -20> .2 texture { Brass } } #declare k = k + 1; #end
Shot(<0, 4, -8>, 98, -30, -3, 29)
