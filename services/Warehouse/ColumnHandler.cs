using System.Data;
using Dapper;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Warehouse;

/// <summary>Carries one .NET type to and from columns of either database.</summary>
/// <remarks>For SQL Server the parameter gets its type even when it is null: a null without a type would travel as text.</remarks>
internal abstract class ColumnHandler<T>(SqlDbType type) : SqlMapper.ITypeHandler
    where T : struct
{
    public void SetValue(IDbDataParameter parameter, object value)
    {
        if (parameter is SqlParameter typed)
        {
            typed.SqlDbType = type;
            typed.Value = value is T given ? ToSqlServer(given) : DBNull.Value;
        }
        else
        {
            parameter.Value = value is T given ? ToSqlite(given) : DBNull.Value;
        }
    }

    public object Parse(Type destinationType, object value) => From(value);

    protected abstract object ToSqlite(T value);

    protected abstract object ToSqlServer(T value);

    protected abstract T From(object value);
}
