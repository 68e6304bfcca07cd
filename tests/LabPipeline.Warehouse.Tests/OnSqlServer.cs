using LabPipeline.Warehouse.Tests.Alerts;
using LabPipeline.Warehouse.Tests.Facts;
using LabPipeline.Warehouse.Tests.Machinery;
using LabPipeline.Warehouse.Tests.Plan;
using LabPipeline.Warehouse.Tests.Results;
using LabPipeline.Warehouse.Tests.Schema;

namespace LabPipeline.Warehouse.Tests.OnSqlServer;

public sealed class AlertStoreTests() : AlertStoreSuite(DialectName.SqlServer);

public sealed class ArrivalListTests() : ArrivalListSuite(DialectName.SqlServer);

public sealed class BenchOrderStoreTests() : BenchOrderStoreSuite(DialectName.SqlServer);

public sealed class FactLoaderTests() : FactLoaderSuite(DialectName.SqlServer);

public sealed class FactLoaderModelTests() : FactLoaderModelSuite(DialectName.SqlServer);

public sealed class FileCorrectionsTests() : FileCorrectionsSuite(DialectName.SqlServer);

public sealed class FileLedgerTests() : FileLedgerSuite(DialectName.SqlServer);

public sealed class HeartbeatStoreTests() : HeartbeatStoreSuite(DialectName.SqlServer);

public sealed class HeldFileStoreTests() : HeldFileStoreSuite(DialectName.SqlServer);

public sealed class InboxTests() : InboxSuite(DialectName.SqlServer);

public sealed class LeaseStoreTests() : LeaseStoreSuite(DialectName.SqlServer);

public sealed class MigratorTests() : MigratorSuite(DialectName.SqlServer);

public sealed class OutboxTests() : OutboxSuite(DialectName.SqlServer);

public sealed class PlanStoreTests() : PlanStoreSuite(DialectName.SqlServer);

public sealed class ProgressTests() : ProgressSuite(DialectName.SqlServer);

public sealed class ResultStoreTests() : ResultStoreSuite(DialectName.SqlServer);

public sealed class TrailStoreTests() : TrailStoreSuite(DialectName.SqlServer);

public sealed class WriteTests() : WriteSuite(DialectName.SqlServer);

public sealed class ValueTests() : ValueSuite(DialectName.SqlServer);
