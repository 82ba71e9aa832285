using System.CommandLine;
using Shared;

return ConsoleProgram.Run(new RootCommand("Computes what an air column does."), args);
