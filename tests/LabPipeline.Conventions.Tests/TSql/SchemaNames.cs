using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Follows the statements that make tables, views and indexes, and resolves the names in them.</summary>
internal sealed class SchemaNames(NameCheck check, QueryNames queries)
{
    public void Resolve(TSqlStatement statement)
    {
        switch (statement)
        {
            case CreateTableStatement create:
                Put(Table(create));
                break;
            case AlterTableAddTableElementStatement add:
                Add(add);
                break;
            case ViewStatementBody view:
                Put(new SchemaTable(view.SchemaObjectName.BaseIdentifier.Value, View(view), []));
                break;
            case CreateIndexStatement index:
                Index(index);
                break;
            case DropTableStatement drop:
                Drop(drop);
                break;
            case DropViewStatement drop:
                Drop(drop);
                break;
            case DropIndexStatement:
                break;
            default:
                check.Fault(statement, statement.GetType().Name, "is a kind of statement this check does not know");
                break;
        }
    }

    private void Put(SchemaTable table)
    {
        if (table.Name.StartsWith('#'))
        {
            check.Own(table);
        }
        else
        {
            check.Schema.Put(table);
        }
    }

    private void Drop(DropObjectsStatement drop)
    {
        foreach (var name in drop.Objects.Select(dropped => dropped.BaseIdentifier.Value))
        {
            if (check.Find(name) is null)
            {
                check.Fault(drop, name, "is no table or view");
            }

            check.Forget(name);
            check.Schema.Remove(name);
        }
    }

    private SchemaTable Table(CreateTableStatement create)
    {
        var table = new SchemaTable(create.SchemaObjectName.BaseIdentifier.Value, [], []);
        foreach (var column in create.Definition.ColumnDefinitions)
        {
            table = table.With(column.ColumnIdentifier.Value, IsRequired(column));
        }

        // A table may refer to itself.
        Put(table);
        foreach (var constraint in create.Definition.TableConstraints.Concat(create.Definition.ColumnDefinitions.SelectMany(column => column.Constraints)))
        {
            Constraint(constraint, table);
        }

        return table;
    }

    private void Add(AlterTableAddTableElementStatement add)
    {
        var name = add.SchemaObjectName.BaseIdentifier.Value;
        if (check.Find(name) is not { } table)
        {
            check.Fault(add, name, "is no table");
            return;
        }

        foreach (var column in add.Definition.ColumnDefinitions)
        {
            table = table.With(column.ColumnIdentifier.Value, IsRequired(column));
        }

        Put(table);
        foreach (var constraint in add.Definition.TableConstraints.Concat(add.Definition.ColumnDefinitions.SelectMany(column => column.Constraints)))
        {
            Constraint(constraint, table);
        }
    }

    private void Constraint(ConstraintDefinition constraint, SchemaTable table)
    {
        switch (constraint)
        {
            case UniqueConstraintDefinition unique:
                Expect(unique.Columns.Select(column => column.Column.MultiPartIdentifier.Identifiers[^1]), table);
                break;
            case ForeignKeyConstraintDefinition foreign:
                Expect(foreign.Columns, table);
                var other = foreign.ReferenceTableName.BaseIdentifier;
                if (check.Find(other.Value) is { } referenced)
                {
                    Expect(foreign.ReferencedTableColumns, referenced);
                }
                else
                {
                    check.Fault(other, other.Value, "is no table made before");
                }

                break;
            case CheckConstraintDefinition condition:
                queries.Names(condition.CheckCondition, ScopeOf(table));
                break;
            default:
                break;
        }
    }

    private IReadOnlyList<string> View(ViewStatementBody view)
    {
        var columns = queries.Resolve(view.SelectStatement.QueryExpression, null);
        foreach (var name in columns.Where((name, index) => name.Length == 0 || columns.Take(index).Contains(name)))
        {
            check.Fault(view, name.Length == 0 ? "a column" : name, name.Length == 0 ? "of the view has no name" : "stands twice in the view");
        }

        return view.Columns.Count > 0 ? [.. view.Columns.Select(column => column.Value)] : columns;
    }

    private void Index(CreateIndexStatement index)
    {
        var name = index.OnName.BaseIdentifier.Value;
        if (check.Find(name) is not { } table)
        {
            check.Fault(index, name, "is no table");
            return;
        }

        Expect(index.Columns.Select(column => column.Column.MultiPartIdentifier.Identifiers[^1]), table);
        Expect(index.IncludeColumns.Select(column => column.MultiPartIdentifier.Identifiers[^1]), table);
        queries.Names(index.FilterPredicate, ScopeOf(table));
    }

    private void Expect(IEnumerable<Identifier> columns, SchemaTable table)
    {
        foreach (var column in columns.Where(column => !table.Columns.Contains(column.Value)))
        {
            check.Fault(column, column.Value, $"is no column of {table.Name}");
        }
    }

    private static NameScope ScopeOf(SchemaTable table)
    {
        var scope = new NameScope(null);
        scope.Add(table.Name, table.Columns);
        return scope;
    }

    private static bool IsRequired(ColumnDefinition column) =>
        column is { IdentityOptions: null, DefaultConstraint: null, ComputedColumnExpression: null }
        && column.Constraints.Any(constraint => constraint is NullableConstraintDefinition { Nullable: false });
}
