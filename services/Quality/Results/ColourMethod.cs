using LabPipeline.Science.Colour;

namespace LabPipeline.Quality.Results;

/// <summary>Illuminant, observer and Hunter form of a colour method, as stated by its profile; turns one scale into the other.</summary>
/// <remarks>
/// CIELAB is taken relative to the CIE 15 white of the condition, the tabulated and handbook Hunter forms to the older white published with
/// them, the others to the CIE 15 white. Conversion goes through X, Y, Z chip by chip.
/// </remarks>
internal sealed record ColourMethod(Illuminant Illuminant, Observer Observer, HunterForm Form)
{
    /// <summary>Reads the method; what is missing or unknown is named in <paramref name="whyNot"/>.</summary>
    public static ColourMethod? Read(MethodFacts facts, out string whyNot)
    {
        var faults = new List<string>();
        var illuminant = Stated(facts, MethodFactNames.Illuminant, "A, C, D50, D65 or D75", IlluminantOf, faults);
        var observer = Stated(facts, MethodFactNames.Observer, "2 or 10", ObserverOf, faults);
        var form = Stated(facts, MethodFactNames.HunterForm, "tabulated, square root, sum or handbook C/2", FormOf, faults);
        if (form == HunterForm.HandbookC2 && (illuminant != Illuminant.C || observer != Observer.TwoDegree))
        {
            faults.Add("the handbook form is for illuminant C and observer 2 only");
        }

        if (form == HunterForm.Sum && illuminant == Illuminant.A)
        {
            faults.Add("the sum form is not for illuminant A");
        }

        whyNot = string.Join("; ", faults);
        return faults.Count == 0 ? new ColourMethod(illuminant!.Value, observer!.Value, form!.Value) : null;
    }

    public (double L, double A, double B) ToCielab(double l, double a, double b)
    {
        var xyz = new HunterLab(l, a, b, Scale).ToTristimulus();
        var colour = Cielab.From(new Tristimulus(xyz.X, xyz.Y, xyz.Z, Condition));
        return (colour.L, colour.A, colour.B);
    }

    public (double L, double A, double B) ToHunter(double l, double a, double b)
    {
        var colour = HunterLab.From(new Cielab(l, a, b, Condition).ToTristimulus(), Scale);
        return (colour.L, colour.A, colour.B);
    }

    private ViewingCondition Condition => ViewingCondition.Of(Illuminant, Observer);

    private HunterScale Scale => Form switch
    {
        HunterForm.Tabulated => HunterScale.Tabulated(Illuminant, Observer),
        HunterForm.SquareRoot => HunterScale.SquareRoot(Condition),
        HunterForm.Sum => HunterScale.Sum(Condition),
        _ => HunterScale.HandbookC2(),
    };

    private static T? Stated<T>(MethodFacts facts, string name, string expected, Func<string, T?> read, List<string> faults)
        where T : struct
    {
        var text = facts.Find(name);
        var value = text is null ? null : read(text);
        if (value is null)
        {
            faults.Add(text is null ? $"{name} is not stated" : $"{name} is '{text}', expected {expected}");
        }

        return value;
    }

    private static Illuminant? IlluminantOf(string text) => text switch
    {
        "A" => Illuminant.A,
        "C" => Illuminant.C,
        "D50" => Illuminant.D50,
        "D65" => Illuminant.D65,
        "D75" => Illuminant.D75,
        _ => null,
    };

    private static Observer? ObserverOf(string text) => text switch
    {
        "2" => Observer.TwoDegree,
        "10" => Observer.TenDegree,
        _ => null,
    };

    private static HunterForm? FormOf(string text) => text switch
    {
        "tabulated" => HunterForm.Tabulated,
        "square root" => HunterForm.SquareRoot,
        "sum" => HunterForm.Sum,
        "handbook C/2" => HunterForm.HandbookC2,
        _ => null,
    };
}
