#declare S = 40;
#include "studio.inc"
#include "laundry.inc"
Sweep(<.40, .40, .405>)
Machine(0)
Shot(<0, 19.4, -12>, 128, 25, 9, 27)
