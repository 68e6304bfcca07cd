using LabPipeline.Quality.Tests.Evaluation;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Tests.OnSqlServer;

public sealed class EvaluationTests() : EvaluationSuite(DialectName.SqlServer);

public sealed class PullWatchTests() : PullWatchSuite(DialectName.SqlServer);
