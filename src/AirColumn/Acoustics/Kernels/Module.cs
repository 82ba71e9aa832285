using System.Runtime.CompilerServices;

// Vectors spill to the stack in places; clearing it before each call would cost more than the arithmetic.
[module: SkipLocalsInit]
