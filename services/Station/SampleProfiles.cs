using LabPipeline.Intake;

namespace LabPipeline.Station;

/// <summary>Places the sample profiles in profile folders that are still empty, as something to start from.</summary>
public static class SampleProfiles
{
    public static async Task PlaceMissingAsync(string profileFolder, CancellationToken cancellationToken)
    {
        foreach (var module in StationModules.All().OfType<IntakeModule>())
        {
            var folder = Path.Combine(profileFolder, module.Kind.FolderName);
            Directory.CreateDirectory(folder);
            if (Directory.EnumerateFiles(folder).Any())
            {
                continue;
            }

            var assembly = module.GetType().Assembly;
            foreach (var resource in assembly.GetManifestResourceNames().Where(name => name.StartsWith("Profiles/", StringComparison.Ordinal)))
            {
                using var stream = assembly.GetManifestResourceStream(resource)!;
                await using var file = File.Create(Path.Combine(folder, resource["Profiles/".Length..]));
                await stream.CopyToAsync(file, cancellationToken);
            }
        }
    }
}
