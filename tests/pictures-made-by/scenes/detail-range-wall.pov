#include "room.inc"
#include "kitchen.inc"
Look(<82, 52, 34>, <0, 0, 40>, 58)
