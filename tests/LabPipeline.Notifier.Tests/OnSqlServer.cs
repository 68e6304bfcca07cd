using LabPipeline.Notifier.Tests.Deliveries;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.OnSqlServer;

public sealed class ChannelTestTests() : ChannelTestSuite(DialectName.SqlServer);

public sealed class ConsumerTests() : ConsumerSuite(DialectName.SqlServer);

public sealed class DeliveryStartTests() : DeliveryStartSuite(DialectName.SqlServer);

public sealed class DailyDigestDeliveryTests() : DailyDigestDeliverySuite(DialectName.SqlServer);

public sealed class DeliveryTests() : DeliverySuite(DialectName.SqlServer);

public sealed class OutageTests() : OutageSuite(DialectName.SqlServer);

public sealed class ReminderTests() : ReminderSuite(DialectName.SqlServer);
