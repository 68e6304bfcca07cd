namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>The check itself finds what is wrong, where it is wrong, and lets pass what is right.</summary>
public sealed class NameReviewTests
{
    private const string Schema =
        """
        create table file_row (file_id int identity(1, 1) not null primary key, name nvarchar(20) not null, note nvarchar(20));
        create table value_row (value_id int not null primary key, file_id int not null references file_row (file_id), value decimal(28, 12));
        go
        create or alter view v_row as select f.name, v.value as measured from file_row f join value_row v on v.file_id = f.file_id;
        """;

    [Theory]
    [InlineData("select nam from file_row", 1, "nam")]
    [InlineData("select name\nfrom file_rwo", 2, "file_rwo")]
    [InlineData("select f.name from file_row f\nwhere g.name = 'a'", 2, "g.name")]
    [InlineData("select file_row.name from file_row f", 1, "file_row.name")]
    [InlineData("select name from file_row\norder by nmae", 2, "nmae")]
    [InlineData("select count(*) from file_row group by nmae", 1, "nmae")]
    [InlineData("select file_id from file_row f join value_row v on v.file_id = f.file_id", 1, "file_id")]
    [InlineData("select f.name from file_row f join value_row v on v.fileid = f.file_id", 1, "v.fileid")]
    [InlineData("select name from file_row f where exists (\n select 1 from value_row v where v.file_id = f.id)", 2, "f.id")]
    [InlineData("select d.value from (select name from file_row) d", 1, "d.value")]
    [InlineData("with c as (select name as n from file_row)\nselect c.name from c", 2, "c.name")]
    [InlineData("select measured, value from v_row", 1, "value")]
    [InlineData("select x.* from file_row f", 1, "x.*")]
    [InlineData("select cuont(name) from file_row", 1, "cuont")]
    [InlineData("select row_number() over (partition by nmae order by name) from file_row", 1, "nmae")]
    [InlineData("select name from file_row union all select value_id, value from value_row", 1, "Union")]
    [InlineData("select j.c from openjson(@json) with (a int, b int) j", 1, "j.c")]
    [InlineData("insert into file_row (nmae, name) values ('a', 'b')", 1, "nmae")]
    [InlineData("insert into file_row (note) values ('a')", 1, "file_row.name")]
    [InlineData("insert into file_row (name, note) values ('a')", 1, "insert")]
    [InlineData("insert into file_row (name, note) select name from file_row", 1, "insert")]
    [InlineData("insert into file_row (name) output inserted.id values ('a')", 1, "inserted.id")]
    [InlineData("update file_row set nmae = 'a'", 1, "nmae")]
    [InlineData("update file_row set name = 'a'\nwhere flie_id = 1", 2, "flie_id")]
    [InlineData("update f set name = v.valeu from file_row f join value_row v on v.file_id = f.file_id", 1, "v.valeu")]
    [InlineData("delete from file_rwo", 1, "file_rwo")]
    [InlineData("delete from file_row where exists (select 1 from value_row v where v.file_id = file_row.id)", 1, "file_row.id")]
    [InlineData("create table #new (a int);\ninsert into #new (b) values (1)", 2, "b")]
    [InlineData("create index ix on file_row (nmae)", 1, "nmae")]
    [InlineData("create index ix on file_row (name) where nota is not null", 1, "nota")]
    [InlineData("create table t (a int references file_row (id))", 1, "id")]
    [InlineData("create table t (a int references t2 (id))", 1, "t2")]
    [InlineData("create table t (a int check (b > 0))", 1, "b")]
    [InlineData("alter table file_row add other int references value_row (id)", 1, "id")]
    [InlineData("create or alter view v as select nmae from file_row", 1, "nmae")]
    [InlineData("create or alter view v as select count(*) from file_row", 1, "a column")]
    [InlineData("grant select on v_rwo to somebody", 1, "v_rwo")]
    [InlineData("select name form file_row", 1, null)]
    public void Statement_WithAWrongName_IsRefusedWithLineAndName(string statement, int line, string? name)
    {
        var fault = NameReview.Check("wrong.sql", statement, Migrated()).Faults[0];

        Assert.Equal(("wrong.sql", line), (fault.File, fault.Line));
        Assert.True(name is null || name == fault.Name, fault.ToString());
    }

    [Theory]
    [InlineData("select f.name as n, (select max(v.value) from value_row v where v.file_id = f.file_id) as most from file_row f order by n, f.note, most")]
    [InlineData("with c as (select name, count(*) as rows_ from file_row group by name having count(*) > 1) select c.name from c where c.rows_ > @most")]
    [InlineData("select d.name, a.top_value from file_row d cross apply (select top (1) v.value as top_value from value_row v where v.file_id = d.file_id) a")]
    [InlineData("insert into file_row (name) output inserted.file_id select @name where not exists (select 1 from file_row where name = @name)")]
    [InlineData("update file_row set name = note where file_id in @ids and exists (select 1 from value_row v where v.file_id = file_row.file_id)")]
    [InlineData("create table #new (a int); insert into #new (a) select file_id from file_row; select a from #new; drop table #new")]
    [InlineData("declare @most int = (select max(file_id) from file_row); delete from value_row where file_id > @most")]
    [InlineData("select x.* from (select name, dateadd(day, 1, sysutcdatetime()) as tomorrow from file_row) x order by x.tomorrow")]
    [InlineData("grant select on v_row to somebody")]
    public void Statement_WithRightNames_Passes(string statement) => Assert.Empty(NameReview.Check("right.sql", statement, Migrated()).Faults);

    [Fact]
    public void Parameters_WhenTheStatementDeclaresSome_AreTheOthers() => Assert.Equal(
        ["@a"], NameReview.Check("p.sql", "declare @b int = @a; select name from file_row where file_id = @b or file_id = @a", Migrated()).Parameters);

    private static SqlSchema Migrated()
    {
        var (schema, faults) = NameReview.Migrate([("0001", Schema)]);
        Assert.Empty(faults);
        return schema;
    }
}
