using DroneTube;
using Shared;

return ConsoleProgram.Run(Verbs.Root(), args);
