namespace LabPipeline.Board.Serving;

/// <summary>How the board is reached.</summary>
internal sealed class BoardOptions
{
    public const string Section = "Board";

    /// <summary>The one address the board listens on; default <c>http://127.0.0.1:5080</c>. Must be a loopback address.</summary>
    public string Url { get; set; } = "http://127.0.0.1:5080";
}
