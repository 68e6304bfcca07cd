using LabPipeline.Testing;

[assembly: AssemblyFixture(typeof(SqlServerCleanUp))]
