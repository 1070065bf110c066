#include "room.inc"
#include "kitchen.inc"
Look(<52, 56, -66>, <66, 0, 100>, 62)
