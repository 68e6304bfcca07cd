using LabPipeline.Hosting.Bus;

namespace LabPipeline.Hosting;

/// <summary>Where this laboratory keeps its data and how its services talk.</summary>
public sealed class LabOptions
{
    public const string Section = "Lab";

    /// <summary>Folder of everything the embedded set-up keeps: warehouse, archive, drop folders, profiles, logs. Default <c>lab-data</c>.</summary>
    public string DataFolder { get; set; } = "lab-data";

    /// <summary>Whether log lines also go to the console. Default false: the station's commands print for people.</summary>
    public bool LogToConsole { get; set; }

    /// <summary>How services talk: <c>in-process</c> when all run in one process (the default), <c>rabbitmq</c> between processes.</summary>
    public string Bus { get; set; } = BusNames.InProcess;

    /// <summary>The embedded warehouse.</summary>
    public string WarehouseFile => Path.Combine(Path.GetFullPath(DataFolder), "warehouse.db");

    /// <summary>Every file ever taken, under its SHA-256.</summary>
    public string ArchiveFolder => Path.Combine(Path.GetFullPath(DataFolder), "archive");

    /// <summary>Copies of the embedded warehouse.</summary>
    public string BackupFolder => Path.Combine(Path.GetFullPath(DataFolder), "backups");

    /// <summary>Profiles, one folder for each kind of instrument.</summary>
    public string ProfileFolder => Path.Combine(Path.GetFullPath(DataFolder), "profiles");

    /// <summary>Drop folders, one for each kind of instrument.</summary>
    public string DropFolder => Path.Combine(Path.GetFullPath(DataFolder), "drop");

    /// <summary>Structured logs.</summary>
    public string LogFolder => Path.Combine(Path.GetFullPath(DataFolder), "logs");
}
