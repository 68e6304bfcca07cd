namespace LabPipeline.Board.Tests.Serving;

/// <summary>Tests beside which no other board may run: measuring instruments are known by name in the whole process.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class OnlyBoard
{
    public const string Name = "the only board of the process";
}
