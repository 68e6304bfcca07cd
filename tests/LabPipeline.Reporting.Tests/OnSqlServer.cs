using LabPipeline.Reporting.Tests.Exports;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Tests.OnSqlServer;

public sealed class ExportStoreTests() : ExportStoreSuite(DialectName.SqlServer);
public sealed class AnalystQueryTests() : AnalystQuerySuite(DialectName.SqlServer);
