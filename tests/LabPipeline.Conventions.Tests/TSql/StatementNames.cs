using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Resolves the names of whole statements. A kind it does not know is a fault, so that nothing passes unread.</summary>
internal sealed class StatementNames(NameCheck check)
{
    public void Resolve(TSqlFragment script)
    {
        foreach (var statement in ((TSqlScript)script).Batches.SelectMany(batch => batch.Statements))
        {
            Resolve(statement);
        }
    }

    private void Resolve(TSqlStatement statement)
    {
        var queries = new QueryNames(check);
        if (statement is StatementWithCtesAndXmlNamespaces with)
        {
            queries.AddCommon(with.WithCtesAndXmlNamespaces);
        }

        switch (statement)
        {
            case SelectStatement select:
                queries.Resolve(select.QueryExpression, null);
                break;
            case InsertStatement insert:
                new ChangeNames(check, queries).Resolve(insert.InsertSpecification);
                break;
            case UpdateStatement update:
                new ChangeNames(check, queries).Resolve(update.UpdateSpecification);
                break;
            case DeleteStatement delete:
                new ChangeNames(check, queries).Resolve(delete.DeleteSpecification);
                break;
            case IfStatement choice:
                queries.Names(choice.Predicate, new NameScope(null));
                Resolve(choice.ThenStatement);
                if (choice.ElseStatement is not null)
                {
                    Resolve(choice.ElseStatement);
                }

                break;
            case BeginEndBlockStatement block:
                foreach (var inner in block.StatementList.Statements)
                {
                    Resolve(inner);
                }

                break;
            default:
                ResolveOther(statement, queries);
                break;
        }
    }

    private void ResolveOther(TSqlStatement statement, QueryNames queries)
    {
        switch (statement)
        {
            case DeclareVariableStatement declare:
                foreach (var element in declare.Declarations)
                {
                    queries.Names(element.Value, new NameScope(null));
                    check.Declared.Add(element.VariableName.Value);
                }

                break;
            case SetVariableStatement set:
                queries.Names(set.Expression, new NameScope(null));
                break;
            case SecurityStatement security:
                foreach (var target in new[] { security.SecurityTargetObject }.Where(target => target?.ObjectKind is SecurityObjectKind.NotSpecified or SecurityObjectKind.Object))
                {
                    ExpectTable(target.ObjectName.MultiPartIdentifier, target.ObjectName.MultiPartIdentifier.Identifiers[^1].Value);
                }

                break;
            case PredicateSetStatement or ExecuteStatement or CreateRoleStatement or AlterRoleStatement or CreateLoginStatement or CreateUserStatement:
            case AlterDatabaseSetStatement or PrintStatement or CreateSchemaStatement:
                break;
            default:
                new SchemaNames(check, queries).Resolve(statement);
                break;
        }
    }

    private void ExpectTable(TSqlFragment at, string name)
    {
        if (check.Find(name) is null)
        {
            check.Fault(at, name, "is no table or view");
        }
    }
}
