using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Resolves the names of queries, from the sources inwards.</summary>
internal sealed class QueryNames(NameCheck check)
{
    private readonly Dictionary<string, IReadOnlyList<string>> _common = new(StringComparer.Ordinal);

    /// <summary>Makes the common table expressions known to what follows.</summary>
    public void AddCommon(WithCtesAndXmlNamespaces? with)
    {
        foreach (var common in with?.CommonTableExpressions ?? [])
        {
            var columns = Resolve(common.QueryExpression, null);
            _common[common.ExpressionName.Value] = common.Columns.Count > 0 ? [.. common.Columns.Select(column => column.Value)] : columns;
        }
    }

    /// <returns>Names of the columns the query gives; an unnamed one is empty.</returns>
    public IReadOnlyList<string> Resolve(QueryExpression query, NameScope? around)
    {
        switch (query)
        {
            case QuerySpecification specification:
                return Resolve(specification, around);
            case QueryParenthesisExpression inner:
                return Resolve(inner.QueryExpression, around);
            case BinaryQueryExpression pair:
                var first = Resolve(pair.FirstQueryExpression, around);
                var second = Resolve(pair.SecondQueryExpression, around);
                if (first.Count != second.Count)
                {
                    check.Fault(pair, pair.BinaryQueryExpressionType.ToString(), $"joins {first.Count} columns with {second.Count}");
                }

                Order(pair.OrderByClause, new NameScope(null), first);
                return first;
            default:
                check.Fault(query, query.GetType().Name, "is a kind of query this check does not know");
                return [];
        }
    }

    /// <summary>Adds the sources of <paramref name="from"/> to <paramref name="scope"/>, and resolves what stands between them.</summary>
    public void AddSources(FromClause? from, NameScope scope, NameScope? around)
    {
        foreach (var reference in from?.TableReferences ?? [])
        {
            AddSource(reference, scope, around);
        }
    }

    public void Names(TSqlFragment? fragment, NameScope scope) => fragment?.Accept(new ExpressionNames(check, this, scope));

    private List<string> Resolve(QuerySpecification query, NameScope? around)
    {
        var scope = new NameScope(around);
        AddSources(query.FromClause, scope, around);
        Names(query.TopRowFilter, scope);
        Names(query.WhereClause, scope);
        Names(query.GroupByClause, scope);
        Names(query.HavingClause, scope);
        var columns = new List<string>();
        foreach (var element in query.SelectElements)
        {
            Names(element, scope);
            columns.AddRange(Given(element, scope));
        }

        Order(query.OrderByClause, scope, columns);
        Names(query.OffsetClause, scope);
        return columns;
    }

    private IEnumerable<string> Given(SelectElement element, NameScope scope)
    {
        switch (element)
        {
            case SelectScalarExpression { ColumnName: { } name }:
                return [name.Value];
            case SelectScalarExpression { Expression: ColumnReferenceExpression { MultiPartIdentifier: { } parts } }:
                return [parts.Identifiers[^1].Value];
            case SelectStarExpression { Qualifier: null }:
                return scope.Sources.SelectMany(source => source.Columns);
            case SelectStarExpression star:
                var alias = star.Qualifier.Identifiers[^1].Value;
                var source = scope.Sources.FirstOrDefault(candidate => candidate.Alias == alias);
                if (source.Columns is null)
                {
                    check.Fault(star, alias + ".*", "is no source here");
                }

                return source.Columns ?? [];
            default:
                return [""];
        }
    }

    private void Order(OrderByClause? order, NameScope scope, IReadOnlyList<string> given)
    {
        foreach (var element in order?.OrderByElements ?? [])
        {
            // Names the query gives come before those of its sources.
            var isGiven = element.Expression is ColumnReferenceExpression { MultiPartIdentifier.Identifiers: [var name] } && given.Contains(name.Value);
            if (!isGiven)
            {
                Names(element.Expression, scope);
            }
        }
    }

    private void AddSource(TableReference reference, NameScope scope, NameScope? around)
    {
        switch (reference)
        {
            case QualifiedJoin join:
                AddSource(join.FirstTableReference, scope, around);
                AddSource(join.SecondTableReference, scope, around);
                Names(join.SearchCondition, scope);
                break;
            case UnqualifiedJoin join:
                AddSource(join.FirstTableReference, scope, around);
                var applied = join.UnqualifiedJoinType is UnqualifiedJoinType.CrossApply or UnqualifiedJoinType.OuterApply;
                AddSource(join.SecondTableReference, scope, applied ? scope : around);
                break;
            case JoinParenthesisTableReference inner:
                AddSource(inner.Join, scope, around);
                break;
            case TableReferenceWithAlias source:
                AddOne(source, scope, around);
                break;
            default:
                check.Fault(reference, reference.GetType().Name, "is a kind of source this check does not know");
                break;
        }
    }

    private void AddOne(TableReferenceWithAlias source, NameScope scope, NameScope? around)
    {
        switch (source)
        {
            case NamedTableReference table:
                var name = table.SchemaObject.BaseIdentifier.Value;
                scope.Add(table.Alias?.Value ?? name, ColumnsOf(table, name));
                break;
            case QueryDerivedTable query:
                var columns = Resolve(query.QueryExpression, around);
                scope.Add(query.Alias.Value, query.Columns.Count > 0 ? [.. query.Columns.Select(column => column.Value)] : columns);
                break;
            case InlineDerivedTable rows:
                Names(rows, around ?? new NameScope(null));
                scope.Add(rows.Alias.Value, [.. rows.Columns.Select(column => column.Value)]);
                break;
            case OpenJsonTableReference json:
                Names(json.Variable, around ?? new NameScope(null));
                string[] plain = ["key", "value", "type"];
                scope.Add(json.Alias?.Value ?? "", json.SchemaDeclarationItems.Count == 0
                    ? plain
                    : [.. json.SchemaDeclarationItems.Select(item => item.ColumnDefinition.ColumnIdentifier.Value)]);
                break;
            default:
                check.Fault(source, source.GetType().Name, "is a kind of source this check does not know");
                break;
        }
    }

    private IReadOnlyList<string> ColumnsOf(NamedTableReference table, string name)
    {
        if (_common.TryGetValue(name, out var columns))
        {
            return columns;
        }

        if (check.Find(name) is { } known)
        {
            return known.Columns;
        }

        if (table.SchemaObject.SchemaIdentifier?.Value == "sys" && KnownSystemViews.Columns.TryGetValue(name, out columns))
        {
            return columns;
        }

        check.Fault(table, name, "is no table, view or common table expression");
        return [];
    }
}
