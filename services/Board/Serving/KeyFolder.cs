using LabPipeline.Hosting;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Serving;

/// <summary>The keys that sign cookies and forms, kept in the data folder so that a restart ends nobody's work.</summary>
internal sealed class KeyFolder(IOptions<LabOptions> lab, ILoggerFactory loggers) : IConfigureOptions<KeyManagementOptions>
{
    private const string Name = "board-keys";

    public void Configure(KeyManagementOptions options) =>
        options.XmlRepository = new FileSystemXmlRepository(Create(Path.Combine(Path.GetFullPath(lab.Value.DataFolder), Name)), loggers);

    /// <summary>Whoever reads the keys can sign in as anybody, so nobody but the board's account may.</summary>
    private static DirectoryInfo Create(string path) => OperatingSystem.IsWindows()
        ? Directory.CreateDirectory(path)
        : Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
}
