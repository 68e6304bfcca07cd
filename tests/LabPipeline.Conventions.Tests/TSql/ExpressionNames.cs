using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Finds columns, variables, functions and inner queries in an expression and resolves them where they stand.</summary>
internal sealed class ExpressionNames(NameCheck check, QueryNames queries, NameScope scope) : TSqlFragmentVisitor
{
    public override void ExplicitVisit(ColumnReferenceExpression node)
    {
        if (node.ColumnType == ColumnType.Regular)
        {
            check.Expect(scope, node);
        }
    }

    public override void ExplicitVisit(VariableReference node)
    {
        if (!check.Declared.Contains(node.Name))
        {
            check.Parameters.Add(node.Name);
        }
    }

    public override void ExplicitVisit(ScalarSubquery node) => queries.Resolve(node.QueryExpression, scope);

    public override void ExplicitVisit(FunctionCall node)
    {
        var name = node.FunctionName.Value;
        var ofDateParts = KnownFunctions.OfDateParts.Contains(name);
        if (!ofDateParts && !KnownFunctions.All.Contains(name))
        {
            check.Fault(node, name, "is none of the functions our statements use");
        }

        foreach (var parameter in node.Parameters.Skip(ofDateParts ? 1 : 0))
        {
            parameter.Accept(this);
        }

        node.OverClause?.Accept(this);
        node.WithinGroupClause?.Accept(this);
    }
}
