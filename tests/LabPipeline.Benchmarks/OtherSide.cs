using System.Diagnostics;

namespace LabPipeline.Benchmarks;

/// <summary>The programs compared with, each a process of its own, with a table of the same unique key, write-ahead log and synchronous FULL.</summary>
internal static class OtherSide
{
    private const string Table = "create table if not exists r (sample text, run text, seq integer, extract text, replicate integer, glucose real, operator text, time text, unique (run, seq))";

    private const string PythonSettings = $"""
        import csv, hashlib, os, sqlite3, sys
        database, path = sys.argv[1], sys.argv[2]
        con = sqlite3.connect(database, isolation_level=None)
        con.execute("pragma journal_mode = wal")
        con.execute("pragma synchronous = full")
        con.execute("{Table}")
        insert = "insert into r values (?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing"

        """;

    private const string PythonImport = PythonSettings + """
        with open(path, newline="") as file:
            rows = csv.reader(file)
            next(rows)
            con.execute("begin immediate")
            con.executemany(insert, rows)
            con.execute("commit")
        """;

    private const string PythonFolder = PythonSettings + """
        con.execute("create table if not exists f (sha256 text primary key, name text)")
        for name in sorted(os.listdir(path)):
            with open(os.path.join(path, name), "rb") as file:
                text = file.read()
            con.execute("begin immediate")
            con.execute("insert or ignore into f values (?, ?)", (hashlib.sha256(text).hexdigest(), name))
            rows = csv.reader(text.decode().splitlines())
            next(rows)
            con.executemany(insert, rows)
            con.execute("commit")
        """;

    private const string PythonTyped = """
        import csv, datetime, sys
        from decimal import Decimal
        with open(sys.argv[1], newline="") as file:
            rows = csv.reader(file)
            next(rows)
            for sample, run, seq, extract, replicate, glucose, person, time in rows:
                int(seq), int(replicate), Decimal(glucose), datetime.datetime.strptime(time, "%Y-%m-%d %H:%M:%S")
        """;

    private const string PythonPlain = """
        import csv, sys
        with open(sys.argv[1], newline="") as file:
            for row in csv.reader(file):
                pass
        """;

    private const string RImport = """
        args <- commandArgs(trailingOnly = TRUE)
        rows <- data.table::fread(args[2])
        con <- DBI::dbConnect(RSQLite::SQLite(), args[1])
        DBI::dbExecute(con, "pragma journal_mode = wal")
        DBI::dbExecute(con, "pragma synchronous = full")
        DBI::dbExecute(con, "create table r (sample text, run text, seq integer, extract text, replicate integer, glucose real, operator text, time text, unique (run, seq))")
        names(rows) <- tolower(names(rows))
        rows$time <- as.character(rows$time)
        DBI::dbWriteTable(con, "r", rows, append = TRUE)
        """;

    /// <summary>Whether R with the packages of its import is there.</summary>
    public static async Task<bool> HasRAsync()
    {
        try
        {
            return await RunAsync("Rscript", ["-e", "quit(status = !all(sapply(c('data.table', 'DBI', 'RSQLite'), requireNamespace, quietly = TRUE)))"], null, mustSucceed: false) == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    public static Task<double> SqliteImportAsync(string database, string file) => TimeAsync("sqlite3", [database], $"""
        pragma journal_mode = wal;
        pragma synchronous = full;
        {Table};
        .import --csv --skip 1 {file} r

        """);

    public static Task<double> PythonImportAsync(string database, string file) => TimeAsync("python3", ["-c", PythonImport, database, file], null);

    public static Task<double> PythonFolderAsync(string database, string folder) => TimeAsync("python3", ["-c", PythonFolder, database, folder], null);

    public static Task<double> PythonPlainParseAsync(string file) => TimeAsync("python3", ["-c", PythonPlain, file], null);

    public static Task<double> PythonTypedParseAsync(string file) => TimeAsync("python3", ["-c", PythonTyped, file], null);

    public static Task<double> RImportAsync(string database, string file) => TimeAsync("Rscript", ["-e", RImport, database, file], null);

    public static void Forget(string database)
    {
        foreach (var path in Directory.EnumerateFiles(Path.GetDirectoryName(database)!, Path.GetFileName(database) + "*"))
        {
            File.Delete(path);
        }
    }

    private static async Task<double> TimeAsync(string program, string[] arguments, string? input)
    {
        var watch = Stopwatch.StartNew();
        await RunAsync(program, arguments, input, mustSucceed: true);
        return watch.Elapsed.TotalSeconds;
    }

    private static async Task<int> RunAsync(string program, string[] arguments, string? input, bool mustSucceed)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 || !mustSucceed ? process.ExitCode : throw new InvalidOperationException($"{program} ended with {process.ExitCode}.");
    }
}
