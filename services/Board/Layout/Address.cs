namespace LabPipeline.Board.Layout;

/// <summary>Addresses of the board's own pages; every part that comes from data is escaped.</summary>
internal static class Address
{
    public static string OfSample(string barcode) => "/sample?barcode=" + Uri.EscapeDataString(barcode);

    public static string OfTrial(string code) => "/?trial=" + Uri.EscapeDataString(code);

    public static string OfAlert(int alertId) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"/alert/{alertId}");

    public static string OfFile(int fileId) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"/arrival/{fileId}");

    public static string OfAlerts(string? level, string? rule) => With("/alerts", ("level", level), ("rule", rule));

    public static string OfArrivals(string? state) => With("/arrivals", ("state", state));

    public static string OfPapers(string trial, int pull, string paper) =>
        With("/papers", ("trial", trial), ("pull", pull.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("paper", paper));

    /// <summary>The address with a page number still to be put behind it.</summary>
    public static string UpToPage(string address) => address + (address.Contains('?', StringComparison.Ordinal) ? "&page=" : "?page=");

    public static string With(string path, params (string Name, string? Value)[] parts)
    {
        var given = parts.Where(part => !string.IsNullOrEmpty(part.Value)).Select(part => $"{part.Name}={Uri.EscapeDataString(part.Value!)}").ToList();
        return given.Count == 0 ? path : $"{path}?{string.Join('&', given)}";
    }

    /// <summary>Whether an address from outside leads to a page of this board and nowhere else.</summary>
    public static bool IsOwn(string? address) =>
        address is ['/', ..] && !(address.Length > 1 && address[1] is '/' or '\\') && !address.Any(char.IsControl);
}
