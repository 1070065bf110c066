#declare S = 24;
#include "studio.inc"
Sweep(<.46, .45, .43>)
// a drawer kind, built in: glass face, steel frame, the drawer a little out
union { RB(<-11.9, 0, -21>, <11.9, 13.8, 0>, .2) texture { SteelH } }
difference { union { RB(<-11.95, 0, -25.6>, <11.95, 9.9, -24>, .18) } texture { SteelH } }
box { <-11, 1.0, -25.66> <11, 9.1, -25.55> texture { BlackGlass } }
box { <-11.4, .3, -24.1> <11.4, 9.6, -20.9> pigment { rgb .30 } }
union { RB(<-11.95, 10.05, -21.9>, <11.95, 13.8, -20.5>, .18) texture { SteelH } }
box { <-5.5, 10.7, -21.96> <5.5, 13.1, -21.85> texture { BlackGlass } }
#declare k = 0; #while (k < 4) box { <-4.4 + k * .85, 11.5, -21.99> <-3.9 + k * .85, 12.3, -21.9> pigment { rgb <.6, .8, .9> } finish { emission .5 } } #declare k = k + 1; #end
union { cylinder { <-9, 9.0, -27> <9, 9.0, -27> .36 } sphere { <-9, 9, -27> .36 } sphere { <9, 9, -27> .36 } cylinder { <-8, 9, -25.5> <-8, 9, -27> .28 } cylinder { <8, 9, -25.5> <8, 9, -27> .28 } texture { Chrome } }
Shot(<0, 6.4, -14>, 70, -28, 16, 29)
