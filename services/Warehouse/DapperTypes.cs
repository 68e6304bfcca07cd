using System.Data;
using System.Globalization;
using Dapper;

namespace LabPipeline.Warehouse;

/// <summary>How .NET values travel to and from columns, registered once before the first query.</summary>
/// <remarks>SQLite keeps instants and dates as ISO text, so that they sort and compare as text; SQL Server has types of its own.</remarks>
public static class DapperTypes
{
    private const string InstantFormat = "yyyy-MM-ddTHH:mm:ss.fffZ";
    private const string DateFormat = "yyyy-MM-dd";

    private static readonly Lazy<bool> Registered = new(RegisterOnce);

    public static void Register() => _ = Registered.Value;

    /// <summary>An instant as SQLite columns hold it.</summary>
    public static string InstantText(DateTimeOffset instant) =>
        instant.UtcDateTime.ToString(InstantFormat, CultureInfo.InvariantCulture);

    /// <summary>An instant as columns of SQL Server hold it: like SQLite's text, whole milliseconds in UTC, cut and not rounded.</summary>
    public static DateTimeOffset Stored(DateTimeOffset instant) => new(instant.UtcTicks - (instant.UtcTicks % TimeSpan.TicksPerMillisecond), TimeSpan.Zero);

    private static bool RegisterOnce()
    {
        SqlMapper.RemoveTypeMap(typeof(DateTimeOffset));
        SqlMapper.RemoveTypeMap(typeof(DateTimeOffset?));
        SqlMapper.RemoveTypeMap(typeof(decimal));
        SqlMapper.RemoveTypeMap(typeof(decimal?));
        SqlMapper.RemoveTypeMap(typeof(Guid));
        SqlMapper.RemoveTypeMap(typeof(Guid?));
        SqlMapper.RemoveTypeMap(typeof(DateOnly));
        SqlMapper.RemoveTypeMap(typeof(DateOnly?));
        SqlMapper.AddTypeHandler(typeof(DateTimeOffset), new InstantHandler());
        SqlMapper.AddTypeHandler(typeof(DateOnly), new DateHandler());
        SqlMapper.AddTypeHandler(typeof(decimal), new DecimalHandler());
        SqlMapper.AddTypeHandler(typeof(Guid), new GuidHandler());
        return true;
    }

    private sealed class InstantHandler() : ColumnHandler<DateTimeOffset>(SqlDbType.DateTimeOffset)
    {
        protected override object ToSqlite(DateTimeOffset value) => InstantText(value);

        protected override object ToSqlServer(DateTimeOffset value) => Stored(value);

        protected override DateTimeOffset From(object value) => value switch
        {
            DateTimeOffset instant => instant.ToUniversalTime(),
            string text => DateTimeOffset.ParseExact(text, InstantFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal),
            _ => throw new DataException($"Found {value.GetType().Name} where an instant was expected."),
        };
    }

    private sealed class DateHandler() : ColumnHandler<DateOnly>(SqlDbType.Date)
    {
        protected override object ToSqlite(DateOnly value) => value.ToString(DateFormat, CultureInfo.InvariantCulture);

        protected override object ToSqlServer(DateOnly value) => value;

        protected override DateOnly From(object value) => value switch
        {
            DateOnly date => date,
            DateTime date => DateOnly.FromDateTime(date),
            string text => DateOnly.ParseExact(text, DateFormat, CultureInfo.InvariantCulture),
            _ => throw new DataException($"Found {value.GetType().Name} where a date was expected."),
        };
    }

    // SQLite stores 250.00 as an integer and 0.052 as a real; both come back as the decimal that was written (at most 15 digits).
    private sealed class DecimalHandler() : ColumnHandler<decimal>(SqlDbType.Decimal)
    {
        protected override object ToSqlite(decimal value) => (double)value;

        protected override object ToSqlServer(decimal value) => value;

        protected override decimal From(object value) => value switch
        {
            // Dividing by a long one drops the zeros that decimal(28, 12) adds.
            decimal exact => exact / 1.0000000000000000000000000000m,
            double real => (decimal)real,
            long whole => whole,
            _ => Convert.ToDecimal(value, CultureInfo.InvariantCulture),
        };
    }

    private sealed class GuidHandler() : ColumnHandler<Guid>(SqlDbType.UniqueIdentifier)
    {
        protected override object ToSqlite(Guid value) => value.ToString("D");

        protected override object ToSqlServer(Guid value) => value;

        protected override Guid From(object value) => value is Guid guid ? guid : Guid.ParseExact((string)value, "D");
    }
}
