using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Reading;

/// <summary>Leads a row source from row to row: counts lines, passes over blank lines, comments and the trailer, and notices how the file ends.</summary>
internal sealed class RowFeed(Profile profile, CharWindow window, ReadLimits limits, FaultLog faults)
{
    private readonly TextRule _text = profile.Text;

    // Colour text has its own end mark and its own reader for it.
    private readonly string? _trailer = profile.Text.Layout == TextLayout.Cgats ? null : profile.Files.TrailerText;
    private bool _trailerSeen;
    private bool _stopped;

    public ReadLimits Limits => limits;

    public CharWindow Window => window;

    /// <summary>Line of the next unread character, counted from 1.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>The end promised by the profile is not there.</summary>
    public bool Incomplete { get; private set; }

    /// <summary>The file was read to an end that is as its profile promises.</summary>
    public bool EndedWell { get; private set; }

    /// <summary>Ends the reading for good: nothing after this place can be trusted.</summary>
    public void Stop(Fault fault)
    {
        faults.Add(fault);
        _stopped = true;
    }

    /// <summary>Goes to the beginning of the next row; false when there is none.</summary>
    public bool SeekRow(bool blankLinesCount = false)
    {
        while (!_stopped)
        {
            if (window.Unread.IsEmpty && !window.More())
            {
                return AtEnd();
            }

            if (_trailer is not null && BeginsWith(_trailer))
            {
                _trailerSeen = true;
                SkipLine();
            }
            else if (_text.CommentPrefix is { } prefix && BeginsWith(prefix))
            {
                SkipLine();
            }
            else if (!blankLinesCount && IsBlankLine())
            {
                SkipLine();
            }
            else if (_trailerSeen)
            {
                Stop(FaultCatalogue.TextAfterTrailer(Line, FirstLine()));
            }
            else
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Passes over the rest of the line, however it is made.</summary>
    public bool SkipLine()
    {
        if (window.Unread.IsEmpty && !window.More())
        {
            return false;
        }

        var length = LineLength(out var lineEnd);
        if (length < 0)
        {
            return false;
        }

        Pass(length + lineEnd, lineEnd);
        return true;
    }

    /// <summary>Moves behind a row of <paramref name="length"/> characters holding <paramref name="lineEnds"/> line ends.</summary>
    public void Pass(int length, int lineEnds)
    {
        window.Advance(length);
        Line += lineEnds;
    }

    /// <summary>The file ended before its column names. Always false.</summary>
    public bool EndBeforeHeader(int headerLine)
    {
        if (faults.Count == 0)
        {
            AtEnd();
        }

        if (faults.Count == 0)
        {
            faults.Add(FaultCatalogue.HeaderMissing(Line, headerLine));
        }

        return false;
    }

    /// <summary>Length of the line ahead without its line feed, or -1 when the reading had to stop.</summary>
    public int LineLength(out int lineEnd)
    {
        lineEnd = 1;
        var searched = 0;
        while (true)
        {
            var unread = window.Unread;
            var found = unread[searched..].IndexOf('\n');
            if (found >= 0 && searched + found <= limits.MaxLineLength)
            {
                return searched + found;
            }

            if (found >= 0 || unread.Length > limits.MaxLineLength)
            {
                Stop(FaultCatalogue.LineTooLong(Line, limits.MaxLineLength));
                return -1;
            }

            searched = unread.Length;
            if (!window.More())
            {
                lineEnd = 0;
                return CutHere() ? -1 : searched;
            }
        }
    }

    /// <summary>
    /// Whether the row ahead, which no line end closes, must not be read: undecodable bytes follow, or the profile promises a line end.
    /// The fault is noted.
    /// </summary>
    public bool CutHere()
    {
        if (window.Problem != DecodeProblem.None || (profile.Files.Complete == Completeness.FinalNewline && !_stopped))
        {
            AtEnd();
            return true;
        }

        // Without its trailer the file is held anyway, and its last line may be part of one.
        return profile.Files.Complete == Completeness.Trailer && !BeginsWith(profile.Files.TrailerText!) && !AtEnd();
    }

    /// <summary>The file ends inside a row that something else than its end should have closed.</summary>
    public void EndInside(Fault fault)
    {
        if (window.Problem == DecodeProblem.None)
        {
            faults.Add(fault);
        }

        AtEnd();
    }

    /// <summary>The layout's own end mark was met: only blank lines and comments may follow.</summary>
    public void SeeTrailer() => _trailerSeen = true;

    /// <summary>The file ended well, but before the layout's own end mark.</summary>
    public void MissEnd(string mark)
    {
        if (EndedWell)
        {
            EndedWell = false;
            Incomplete = profile.Files.ContentShowsEnd;
            faults.Add(FaultCatalogue.TrailerMissing(Line, mark));
        }
    }

    private bool AtEnd()
    {
        if (_stopped)
        {
            return false;
        }

        _stopped = true;
        var cut = window.Problem == DecodeProblem.CutCharacter;
        if (window.Problem != DecodeProblem.None)
        {
            faults.Add(FaultCatalogue.Undecodable(window.Problem, window.ProblemOffset, _text.Encoding, Line));
            if (!cut)
            {
                return false;
            }
        }

        if (window.Last == '\0' && !cut)
        {
            faults.Add(FaultCatalogue.EmptyFile());
            Incomplete = profile.Files.ContentShowsEnd;
            return false;
        }

        switch (profile.Files.Complete)
        {
            case Completeness.FinalNewline when cut || window.Last != '\n':
                Incomplete = true;
                faults.Add(FaultCatalogue.LastLineCut(Line, FirstLine()));
                break;
            case Completeness.Trailer when !_trailerSeen:
                Incomplete = true;
                faults.Add(FaultCatalogue.TrailerMissing(Line, profile.Files.TrailerText!));
                break;
            default:
                EndedWell = true;
                break;
        }

        return false;
    }

    private bool BeginsWith(string text)
    {
        while (window.Unread.Length < text.Length && window.More())
        {
        }

        return window.Unread.StartsWith(text, StringComparison.Ordinal);
    }

    private bool IsBlankLine()
    {
        var index = 0;
        while (true)
        {
            var unread = window.Unread;
            for (; index < unread.Length; index++)
            {
                var symbol = unread[index];
                if (symbol == '\n')
                {
                    return true;
                }

                if (symbol is not (' ' or '\r') && (symbol != '\t' || _text.Delimiter == '\t'))
                {
                    return false;
                }
            }

            if (index > limits.MaxLineLength || !window.More())
            {
                return index <= limits.MaxLineLength;
            }
        }
    }

    private ReadOnlySpan<char> FirstLine()
    {
        var unread = window.Unread;
        var end = unread.IndexOf('\n');
        return (end < 0 ? unread : unread[..end]).TrimEnd('\r');
    }
}
