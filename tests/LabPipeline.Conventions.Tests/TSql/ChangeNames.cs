using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Resolves the names of statements that insert, update or delete rows.</summary>
internal sealed class ChangeNames(NameCheck check, QueryNames queries)
{
    private static readonly SchemaTable Unknown = new("", [], []);

    public void Resolve(InsertSpecification insert)
    {
        var target = Target(insert.Target);
        var columns = insert.Columns.Select(column => column.MultiPartIdentifier.Identifiers[^1].Value).ToList();
        foreach (var column in insert.Columns)
        {
            ExpectColumn(target, column);
        }

        foreach (var missing in target.Required.Except(columns).Where(_ => columns.Count > 0))
        {
            check.Fault(insert, $"{target.Name}.{missing}", "must be given and is not");
        }

        var scope = new NameScope(null);
        switch (insert.InsertSource)
        {
            case ValuesInsertSource values:
                foreach (var row in values.RowValues)
                {
                    queries.Names(row, scope);
                    ExpectCount(row, columns.Count, row.ColumnValues.Count);
                }

                break;
            case SelectInsertSource select:
                ExpectCount(select, columns.Count, queries.Resolve(select.Select, null).Count);
                break;
            default:
                check.Fault(insert, insert.InsertSource.GetType().Name, "is a kind of insert this check does not know");
                break;
        }

        Output(insert, target, "inserted");
    }

    public void Resolve(UpdateSpecification update)
    {
        var (target, scope) = Changed(update);
        foreach (var clause in update.SetClauses)
        {
            if (clause is AssignmentSetClause { Column: { } column } assignment)
            {
                ExpectColumn(target, column);
                queries.Names(assignment.NewValue, scope);
            }
            else
            {
                check.Fault(clause, clause.GetType().Name, "is a kind of assignment this check does not know");
            }
        }

        queries.Names(update.WhereClause, scope);
        Output(update, target, "inserted", "deleted");
    }

    public void Resolve(DeleteSpecification delete)
    {
        var (target, scope) = Changed(delete);
        queries.Names(delete.WhereClause, scope);
        Output(delete, target, "deleted");
    }

    private (SchemaTable Target, NameScope Scope) Changed(UpdateDeleteSpecificationBase change)
    {
        var scope = new NameScope(null);
        queries.AddSources(change.FromClause, scope, null);
        queries.Names(change.TopRowFilter, scope);
        var name = change.Target is NamedTableReference named ? named.SchemaObject.BaseIdentifier.Value : "";
        if (scope.Sources.FirstOrDefault(source => source.Alias == name) is { Columns: { } columns })
        {
            return (new SchemaTable(name, columns, []), scope);
        }

        var target = Target(change.Target);
        scope.Add(target.Name, target.Columns);
        return (target, scope);
    }

    private SchemaTable Target(TableReference reference)
    {
        if (reference is not NamedTableReference named)
        {
            check.Fault(reference, reference.GetType().Name, "is a kind of target this check does not know");
            return Unknown;
        }

        var name = named.SchemaObject.BaseIdentifier.Value;
        if (check.Find(name) is { } table)
        {
            return table;
        }

        check.Fault(named, name, "is no table");
        return Unknown with { Name = name };
    }

    private void ExpectColumn(SchemaTable target, ColumnReferenceExpression column)
    {
        var name = column.MultiPartIdentifier.Identifiers[^1].Value;
        if (!target.Columns.Contains(name))
        {
            check.Fault(column, name, $"is no column of {target.Name}");
        }
    }

    private void ExpectCount(TSqlFragment at, int columns, int values)
    {
        if (columns != values)
        {
            check.Fault(at, "insert", $"names {columns} columns and gives {values} values");
        }
    }

    private void Output(DataModificationSpecification change, SchemaTable target, params string[] rows)
    {
        var scope = new NameScope(null);
        foreach (var row in rows)
        {
            scope.Add(row, target.Columns);
        }

        queries.Names(change.OutputClause, scope);
        queries.Names(change.OutputIntoClause, scope);
    }
}
