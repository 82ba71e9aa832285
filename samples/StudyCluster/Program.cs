using Shared;
using StudyCluster;

return ConsoleProgram.Run(ClusterCommand.Create(), args);
