using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Parses T-SQL and resolves every name in it.</summary>
internal static partial class NameReview
{
    /// <summary>The schema after <paramref name="scripts"/>, and what is wrong in them.</summary>
    public static (SqlSchema Schema, IReadOnlyList<NameFault> Faults) Migrate(IEnumerable<(string File, string Text)> scripts)
    {
        var schema = new SqlSchema();
        var faults = scripts.SelectMany(script => Check(script.File, script.Text, schema).Faults).ToList();
        return (schema, faults);
    }

    public static NameCheck Check(string file, string text, SqlSchema schema)
    {
        var check = new NameCheck(file, schema);
        using var reader = new StringReader(WithLists(text));
        var script = new TSql160Parser(initialQuotedIdentifiers: true, SqlEngineType.Standalone).Parse(reader, out var errors);
        foreach (var error in errors)
        {
            check.Fault(error.Line, error.Message, "does not parse");
        }

        if (errors.Count == 0)
        {
            new StatementNames(check).Resolve(script);
        }

        return check;
    }

    // Dapper writes "in @list" out as "in (@list1, @list2)".
    private static string WithLists(string text) => List().Replace(text, "in ($1)");

    [System.Text.RegularExpressions.GeneratedRegex(@"\bin (@\w+)")]
    private static partial System.Text.RegularExpressions.Regex List();
}
