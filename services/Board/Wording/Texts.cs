namespace LabPipeline.Board.Wording;

/// <summary>Names the resource file with the board's sentences: <c>Texts.resx</c> in English, <c>Texts.de.resx</c> and so on for others.</summary>
public sealed class Texts
{
    private Texts()
    {
    }
}
