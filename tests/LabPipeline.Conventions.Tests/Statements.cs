using System.Reflection;
using LabPipeline.Warehouse;

namespace LabPipeline.Conventions.Tests;

/// <summary>The SQL statements of the product, as the stores load them and as the files lie there.</summary>
internal static class Statements
{
    public static IEnumerable<SqlText> Loaded(Assembly assembly) => assembly.GetTypes()
        .Where(type => !type.ContainsGenericParameters)
        .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public))
        .SelectMany(field => field.FieldType == typeof(SqlText)
            ? [(SqlText)field.GetValue(null)!]
            : typeof(IEnumerable<SqlText>).IsAssignableFrom(field.FieldType) ? (IEnumerable<SqlText>)field.GetValue(null)! : []);

    /// <summary>Every embedded file that SQL Server is given, by assembly and file name.</summary>
    public static IEnumerable<(string File, string Text)> ForSqlServer() => ProductAssemblies.All.Values.SelectMany(assembly => SqlText.FilesOf(assembly)
        .Where(file => !file.Key.EndsWith(".sqlite.sql", StringComparison.Ordinal))
        .Select(file => ($"{assembly.GetName().Name}/{file.Key}", file.Value)));

    public static string NameOf(string file) => file.Replace(".sqlite.sql", "").Replace(".sqlserver.sql", "").Replace(".sql", "");
}
