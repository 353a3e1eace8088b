using System.Text;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Solving;

namespace Circuits.Tests.Outside;

/// <summary>What was compared, and where library and answer-set program disagree.</summary>
internal sealed class ClingoTally
{
    public int States { get; set; }

    public int Unsettled { get; set; }

    public int Passages { get; set; }

    public int Levels { get; set; }

    public int Positions { get; set; }

    public int CrossFeeds { get; set; }

    public int CrossFeedsLeftOpen { get; set; }

    public List<string> Disagreements { get; } = [];

    public void Add(ClingoTally other)
    {
        States += other.States;
        Unsettled += other.Unsettled;
        Passages += other.Passages;
        Levels += other.Levels;
        Positions += other.Positions;
        CrossFeeds += other.CrossFeeds;
        CrossFeedsLeftOpen += other.CrossFeedsLeftOpen;
        Disagreements.AddRange(other.Disagreements);
    }

    public override string ToString() =>
        $"{States} states ({Unsettled} never settle), {Passages} passages' oil, {Levels} passages level with their source, "
        + $"{Positions} positions weighed, {CrossFeeds} cross-feeds ({CrossFeedsLeftOpen} that depend on what is left open)";
}

/// <summary>
/// Some assemblies of one unit with the matched sets they are held against: their reports, the facts they make, and the
/// comparison fact by fact with what the program derives from those.
/// </summary>
internal sealed class ClingoBatch
{
    /// <summary>What stacking finds about balls; the program finds each by itself.</summary>
    private static readonly string[] BallRules = ["ball-without-pocket", "divided-pocket", "ball-falls-through", "seat-will-not-seal"];

    private readonly Unit unit;
    private readonly List<(Assembly Assembly, AssemblyReport Report)> assemblies = [];
    private readonly List<(int Assembly, GearReport Gear)> states = [];

    public ClingoBatch(Unit unit, IEnumerable<AssemblyReport> reports)
    {
        this.unit = unit;
        foreach (var report in reports)
        {
            assemblies.Add((report.Assembly, report));
            foreach (var gear in report.Gears) states.Add((assemblies.Count - 1, gear));
        }
    }

    /// <summary>Everything the program is given.</summary>
    public string Facts()
    {
        var text = new StringBuilder(ClingoFacts.Of(unit));
        for (var i = 0; i < assemblies.Count; i++) ClingoClaims.Choose(text, i, assemblies[i].Assembly);
        for (var i = 0; i < states.Count; i++)
            ClingoClaims.Claim(text, i, states[i].Assembly, assemblies[states[i].Assembly].Assembly, states[i].Gear);
        return text.ToString();
    }

    /// <summary>Compares with what the program derived.</summary>
    /// <param name="atoms">The atoms that it told.</param>
    /// <param name="skip">How many assemblies from the first on not to count, since another batch counts them.</param>
    public ClingoTally Compare(IEnumerable<string> atoms, int skip)
    {
        var told = atoms.Select(ClingoAtom.Parse).ToLookup(atom => (atom.Name, atom.Number));
        var tally = new ClingoTally();
        for (var i = skip; i < assemblies.Count; i++) CompareAssembly(tally, told, i);
        for (var i = 0; i < states.Count; i++)
        {
            if (states[i].Assembly >= skip) CompareState(tally, told, i);
        }

        return tally;
    }

    private void CompareAssembly(ClingoTally tally, ILookup<(string, int), ClingoAtom> told, int number)
    {
        var (assembly, report) = assemblies[number];
        void Same(string what, IEnumerable<string> library, IEnumerable<string> program)
        {
            var (ours, theirs) = (library.ToHashSet(), program.ToHashSet());
            if (!ours.SetEquals(theirs))
                tally.Disagreements.Add($"{Name(assembly)}: {what}: library {string.Join(' ', ours)}, program {string.Join(' ', theirs)}");
        }

        Same(
            "findings", report.Findings.Select(finding => finding.Rule).Intersect(BallRules),
            told[("finding", number)].Select(atom => atom.Words[0]));
        if (assembly.Matched is null)
        {
            Same(
                "nearest matched", report.NearestMatched,
                told[("nearest", number)].Select(atom => assemblies[atom.Second].Assembly.Matched!));
        }
    }

    private void CompareState(ClingoTally tally, ILookup<(string, int), ClingoAtom> told, int number)
    {
        var (index, gear) = states[number];
        var where = $"{Name(assemblies[index].Assembly)} gear {gear.Gear}";
        tally.States++;
        CompareOil(tally, told, number, where);
        CompareCrossFeeds(tally, told, number, where);

        // A state that agrees with itself stands where its own pressures put it; one that never settles does not.
        var wrong = told[("wrong", number)].ToList();
        tally.Positions += told[("weighed", number)].Sum(atom => atom.Second);
        if (gear.Settled && wrong.Count > 0)
            tally.Disagreements.Add($"{where}: by their own pressures these stand wrong: {string.Join(", ", wrong.Select(atom => atom.Words[^1]))}");
        if (gear.Settled) return;
        tally.Unsettled++;
        if (wrong.Count == 0) tally.Disagreements.Add($"{where}: never settles, but everything stands where its pressures put it");
    }

    private void CompareOil(ClingoTally tally, ILookup<(string, int), ClingoAtom> told, int number, string where)
    {
        var gear = states[number].Gear;
        var oil = told[("oil", number)].ToDictionary(atom => atom.Words[0], atom => atom.Words[1]);
        var pressures = gear.Pressures.ToDictionary(passage => passage.Passage, passage => passage.Kilopascals);
        if (oil.Count != gear.Pressures.Length)
            tally.Disagreements.Add($"{where}: library has {gear.Pressures.Length} passages, program {oil.Count}");
        foreach (var passage in gear.Pressures)
        {
            tally.Passages++;
            var derived = oil.GetValueOrDefault(passage.Passage, "absent");
            if (derived != Word(passage.State))
                tally.Disagreements.Add($"{where}: {passage.Passage}: library {Word(passage.State)}, program {derived}");
        }

        tally.Levels += told[("levels", number)].Sum(atom => atom.Second);
        foreach (var uneven in told[("uneven", number)])
        {
            var (own, source) = (pressures[uneven.Words[0]], pressures.GetValueOrDefault(uneven.Words[1]));
            tally.Disagreements.Add($"{where}: {uneven.Words[0]} has {own:0.###} kPa, its one source {uneven.Words[1]} {source:0.###} kPa");
        }
    }

    private void CompareCrossFeeds(ClingoTally tally, ILookup<(string, int), ClingoAtom> told, int number, string where)
    {
        var gear = states[number].Gear;
        var library = gear.CrossFeeds.Select(feed => new[] { feed.From, feed.Into, feed.Through }).ToList();
        static string Text(string[] words) => words.Length < 3 ? $"{words[0]} into {words[1]}" : $"{words[0]} into {words[1]} through {words[2]}";
        var known = library.Select(Text).Concat(library.Select(feed => Text(feed[..2]))).ToHashSet();
        var may = told[("may", number)].Select(atom => Text(atom.Words)).ToHashSet();
        tally.CrossFeeds += library.Count;
        tally.CrossFeedsLeftOpen += may.Except(known).Count();

        // must is told with the opening and, where that is one of several, without.
        foreach (var must in told[("must", number)].Where(atom => !known.Contains(Text(atom.Words))))
            tally.Disagreements.Add($"{where}: cross-feed {Text(must.Words)}: program only");

        // Of a state that never settles the library tells what comes in at any time, the program what does at one.
        if (!gear.Settled) return;
        // Which of two ways is wider is a matter of areas, which the program does not know: what comes in beside a usual way the library tells alone.
        var beside = gear.CrossFeeds.Where(feed => feed.IsBesideUsual).Select(feed => Text([feed.From, feed.Into, feed.Through])).ToHashSet();
        foreach (var feed in library.Where(feed => !may.Contains(Text(feed)) && !beside.Contains(Text(feed))))
            tally.Disagreements.Add($"{where}: cross-feed {Text(feed)}: library only");
    }

    private static string Word(OilState state) => state switch
    {
        OilState.Supply => "supply",
        OilState.Exhaust => "exhaust",
        OilState.Between => "between",
        _ => "trapped",
    };

    private static string Name(Assembly assembly) =>
        string.Join(' ', assembly.Choice.Where((_, index) => assembly.Unit.Parts[index].Revisions.Length > 1).Select(pair => $"{pair.Key}={pair.Value}"));
}

/// <summary>An atom as clingo writes it: a name, a first argument that is a number, and words.</summary>
internal readonly record struct ClingoAtom(string Name, int Number, int Second, string[] Words)
{
    public static ClingoAtom Parse(string atom)
    {
        var open = atom.IndexOf('(', StringComparison.Ordinal);
        var arguments = atom[(open + 1)..^1].Split(',');
        var words = arguments[1..].Select(word => word.Trim('"')).ToArray();
        return new ClingoAtom(
            atom[..open], int.Parse(arguments[0], System.Globalization.CultureInfo.InvariantCulture),
            int.TryParse(words[0], out var second) ? second : -1, words);
    }
}
