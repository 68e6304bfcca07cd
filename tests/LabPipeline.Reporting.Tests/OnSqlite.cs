using LabPipeline.Reporting.Tests.Exports;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Tests.OnSqlite;

public sealed class ExportStoreTests() : ExportStoreSuite(DialectName.Sqlite);
public sealed class AnalystQueryTests() : AnalystQuerySuite(DialectName.Sqlite);
