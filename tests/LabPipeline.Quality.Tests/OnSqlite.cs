using LabPipeline.Quality.Tests.Evaluation;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Tests.OnSqlite;

public sealed class EvaluationTests() : EvaluationSuite(DialectName.Sqlite);

public sealed class PullWatchTests() : PullWatchSuite(DialectName.Sqlite);
