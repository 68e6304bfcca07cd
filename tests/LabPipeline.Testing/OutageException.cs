using System.Data.Common;

namespace LabPipeline.Testing;

/// <summary>The database cannot be reached.</summary>
public sealed class OutageException() : DbException("the database is away");
