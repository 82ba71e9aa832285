using ColumnTool.CommandLine;
using Shared;

return ConsoleProgram.Run(Root.Create(), args);
