namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Built-in functions our statements use, as Microsoft's T-SQL reference lists them; a new one is added here on purpose.</summary>
internal static class KnownFunctions
{
    /// <summary>Those whose first argument is a part of a date and not a column.</summary>
    public static readonly HashSet<string> OfDateParts = new(StringComparer.OrdinalIgnoreCase) { "dateadd", "datediff", "datediff_big", "datename", "datepart" };

    public static readonly HashSet<string> All = new(StringComparer.OrdinalIgnoreCase)
    {
        "abs", "avg", "ceiling", "concat", "count", "dense_rank", "first_value", "floor", "isnull", "json_query", "json_value", "lag", "last_value", "lead", "len",
        "lower", "ltrim", "max", "min", "object_id", "power", "rank", "replace", "round", "row_number", "rtrim", "sign", "sqrt", "stdev", "string_agg",
        "substring", "sum", "sysutcdatetime", "trim", "upper", "user_id", "var", "year", "schema_id", "schema_name", "db_name", "database_principal_id",
        "db_id", "suser_id",
    };
}
