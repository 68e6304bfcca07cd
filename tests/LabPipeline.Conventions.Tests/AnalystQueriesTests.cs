using System.Runtime.CompilerServices;
using Dapper;
using LabPipeline.Testing;
using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests;

/// <summary>The worked queries of docs/specs/analyst-queries.md run on the newest schema and parse as T-SQL.</summary>
public sealed class AnalystQueriesTests
{
    private static readonly IReadOnlyList<string> Queries = Read();

    [Fact]
    public void Queries_WhenCounted_AreTen() => Assert.Equal(10, Queries.Count);

    [Fact]
    public void Queries_ForSqlServer_Parse() => Assert.All(Queries, query =>
    {
        using var text = new StringReader(query);
        new TSql160Parser(initialQuotedIdentifiers: true).Parse(text, out var errors);
        Assert.Empty(errors.Select(error => $"line {error.Line}: {error.Message}"));
    });

    [Fact]
    public async Task Queries_OnSqlite_Run()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();
        foreach (var query in Queries)
        {
            await scratch.Warehouse.ReadAsync(session => session.Connection.QueryAsync(query), TestContext.Current.CancellationToken);
        }
    }

    private static IReadOnlyList<string> Read([CallerFilePath] string here = "")
    {
        var page = File.ReadAllText(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "docs", "specs", "analyst-queries.md"));
        return [.. page.Split("```sql").Skip(1).Select(part => part.Split("```")[0].Trim())];
    }
}
