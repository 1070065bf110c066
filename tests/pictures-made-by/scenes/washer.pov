#declare S = 40;
#include "studio.inc"
#include "laundry.inc"
Sweep(<.43, .425, .41>)
Machine(1)
Shot(<0, 19.4, -12>, 128, -25, 9, 27)
