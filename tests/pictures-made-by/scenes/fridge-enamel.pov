#declare S = 72;
#include "studio.inc"
Sweep(<.44, .43, .41>)
#declare Body = Enamel(<.30, .40, .33>)
union { Slab(-14.5, 14.5, -25, 0, 3, 70, 3.2, 1.2) texture { Body } }
box { <-13, 0, -22> <13, 3.2, -3> pigment { rgb .012 } }
union { Slab(-14.6, 14.6, -28.4, -24.9, 26.6, 69.8, 1.7, 1.0) texture { Body } }
union { Slab(-14.6, 14.6, -28.4, -24.9, 3.6, 26.2, 1.7, 1.0) texture { Body } }
box { <-14, 4, -25> <14, 69.2, -24.7> pigment { rgb .02 } }
#declare PA = array[4] { <11.6, 50, -27.8>, <11.6, 50, -30.4>, <11.6, 34, -30.4>, <11.6, 34, -27.8> }
union { Pipe(PA, .8, .45) cylinder { <11.6, 50, -28.3> <11.6, 50, -28.8> .85 } cylinder { <11.6, 34, -28.3> <11.6, 34, -28.8> .85 } texture { Chrome } }
#declare PB = array[4] { <11.6, 24, -27.8>, <11.6, 24, -30.4>, <11.6, 15, -30.4>, <11.6, 15, -27.8> }
union { Pipe(PB, .8, .45) cylinder { <11.6, 24, -28.3> <11.6, 24, -28.8> .85 } cylinder { <11.6, 15, -28.3> <11.6, 15, -28.8> .85 } texture { Chrome } }
union { RB(<-11.5, 62.6, -28.6>, <-4, 64.2, -28.3>, .12) texture { Chrome } }
Shot(<0, 35, -14>, 222, 25, 7, 27)
