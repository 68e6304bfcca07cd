using LabPipeline.Notifier.Tests.Deliveries;
using LabPipeline.Notifier.Tests.Storms;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.OnSqlite;

public sealed class ChannelTestTests() : ChannelTestSuite(DialectName.Sqlite);

public sealed class ConsumerTests() : ConsumerSuite(DialectName.Sqlite);

public sealed class DeliveryStartTests() : DeliveryStartSuite(DialectName.Sqlite);

public sealed class DailyDigestDeliveryTests() : DailyDigestDeliverySuite(DialectName.Sqlite);

public sealed class DeliveryTests() : DeliverySuite(DialectName.Sqlite);

public sealed class OutageTests() : OutageSuite(DialectName.Sqlite);

public sealed class ReminderTests() : ReminderSuite(DialectName.Sqlite);

public sealed class StormTests() : StormSuite(DialectName.Sqlite);
