using LabPipeline.Warehouse.Tests.Alerts;
using LabPipeline.Warehouse.Tests.Facts;
using LabPipeline.Warehouse.Tests.Machinery;
using LabPipeline.Warehouse.Tests.Plan;
using LabPipeline.Warehouse.Tests.Results;
using LabPipeline.Warehouse.Tests.Schema;

namespace LabPipeline.Warehouse.Tests.OnSqlite;

public sealed class AlertStoreTests() : AlertStoreSuite(DialectName.Sqlite);

public sealed class ArrivalListTests() : ArrivalListSuite(DialectName.Sqlite);

public sealed class BenchOrderStoreTests() : BenchOrderStoreSuite(DialectName.Sqlite);

public sealed class FactLoaderTests() : FactLoaderSuite(DialectName.Sqlite);

public sealed class FactLoaderModelTests() : FactLoaderModelSuite(DialectName.Sqlite);

public sealed class FileCorrectionsTests() : FileCorrectionsSuite(DialectName.Sqlite);

public sealed class FileLedgerTests() : FileLedgerSuite(DialectName.Sqlite);

public sealed class HeartbeatStoreTests() : HeartbeatStoreSuite(DialectName.Sqlite);

public sealed class HeldFileStoreTests() : HeldFileStoreSuite(DialectName.Sqlite);

public sealed class InboxTests() : InboxSuite(DialectName.Sqlite);

public sealed class LeaseStoreTests() : LeaseStoreSuite(DialectName.Sqlite);

public sealed class MigratorTests() : MigratorSuite(DialectName.Sqlite);

public sealed class OutboxTests() : OutboxSuite(DialectName.Sqlite);

public sealed class PlanStoreTests() : PlanStoreSuite(DialectName.Sqlite);

public sealed class ProgressTests() : ProgressSuite(DialectName.Sqlite);

public sealed class ResultStoreTests() : ResultStoreSuite(DialectName.Sqlite);

public sealed class TrailStoreTests() : TrailStoreSuite(DialectName.Sqlite);

public sealed class WriteTests() : WriteSuite(DialectName.Sqlite);

public sealed class ValueTests() : ValueSuite(DialectName.Sqlite);
