using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Stacking;

/// <summary>Lays the sheets of a joint between its castings, location by location.</summary>
public static class JointStacker
{
    /// <summary>Lays one joint of an assembly together.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="joint">One of its unit's joints.</param>
    /// <param name="assumptions">Takes a sentence and a place for every size that had to be assumed.</param>
    public static StackedJoint Stack(Assembly assembly, Joint joint, Action<Phrase, Place> assumptions)
    {
        var stack = new Stacker(assembly, joint, assumptions);
        stack.LaySheets();
        stack.Touch();
        stack.FindBlanks();
        return stack.Result();
    }

    private static readonly Phrase Blanked = Phrase.Of($"blanked");
    private static readonly Phrase NoSlot = Phrase.Of($"no slot");
    private static readonly Phrase SolidMetal = Phrase.Of($"solid metal");

    private sealed class Stacker
    {
        private readonly Joint joint;
        private readonly Dictionary<string, Passage> upper;
        private readonly Dictionary<string, Passage> lower;
        private readonly (Part Part, Revision Revision)[] sheets;
        private readonly (Part Part, Revision Revision) upperCasting;
        private readonly (Part Part, Revision Revision) lowerCasting;
        private readonly Action<Phrase, Place> assumptions;

        /// <summary>Per sheet and location, the numbers of the openings there; no entry is metal.</summary>
        private readonly Dictionary<string, List<int>>[] open;
        private readonly List<StackedOpening> openings = [];
        private readonly List<string> locations;
        private readonly Dictionary<(StackEnd A, StackEnd B), (string Location, int Via)> contacts = [];
        private readonly List<string> meetings = [];
        private readonly HashSet<string> met = [];
        private readonly List<Blank> blanks = [];

        public Stacker(Assembly assembly, Joint joint, Action<Phrase, Place> assumptions)
        {
            this.joint = joint;
            this.assumptions = assumptions;
            upperCasting = Chosen(assembly, joint.Upper.Name);
            lowerCasting = Chosen(assembly, joint.Lower.Name);
            upper = PassagesByLocation(upperCasting.Revision);
            lower = PassagesByLocation(lowerCasting.Revision);
            sheets = [.. joint.Sheets.Select(sheet => Chosen(assembly, sheet.Name))];
            open = [.. sheets.Select(_ => new Dictionary<string, List<int>>())];
            locations = [.. upper.Keys];
            foreach (var location in lower.Keys)
            {
                if (!upper.ContainsKey(location)) locations.Add(location);
            }
        }

        /// <summary>Where passages open, and where sheets are open besides.</summary>
        private List<string> LocationsAndHoles()
        {
            List<string> all = [.. locations];
            var listed = new HashSet<string>(all.Count);
            foreach (var location in all) listed.Add(location);
            foreach (var sheet in open)
            {
                foreach (var location in sheet.Keys)
                {
                    if (listed.Add(location)) all.Add(location);
                }
            }

            return all;
        }

        public void LaySheets()
        {
            for (var i = 0; i < sheets.Length; i++)
            {
                foreach (var opening in sheets[i].Revision.Openings)
                    LayOpening(i, opening);
            }

            // A gasket is open wherever anything lies that could need it.
            var used = LocationsAndHoles();
            for (var i = 0; i < sheets.Length; i++)
            {
                var (part, revision) = sheets[i];
                if (!revision.OpenElsewhere) continue;
                foreach (var location in used)
                {
                    if (open[i].ContainsKey(location) || revision.OpenExcept.Any(except => except.Name == location)) continue;
                    Lay(i, new StackedOpening(i, part.Name, revision.Name, [location], null, double.PositiveInfinity, revision.Place));
                }
            }
        }

        /// <summary>
        /// Goes down the stack at each location. Where a gasket does not restrict, what lies above it touches what lies below
        /// as if it were not there.
        /// </summary>
        public void Touch()
        {
            foreach (var location in LocationsAndHoles())
            {
                var above = PassageAt(upperCasting.Part, upper, location);
                var via = -1;
                foreach (var sheet in open)
                {
                    var here = sheet.GetValueOrDefault(location) ?? [];
                    if (here is [var window] && openings[window].Shape is null)
                    {
                        via = window;
                        continue;
                    }

                    List<StackEnd> ends = [.. here.Select(StackEnd.OfOpening)];
                    Join(above, ends, location, via);
                    (above, via) = (ends, -1);
                }

                Join(above, PassageAt(lowerCasting.Part, lower, location), location, via);
            }
        }

        private static List<StackEnd> PassageAt(Part part, Dictionary<string, Passage> map, string location) =>
            map.TryGetValue(location, out var passage) ? [StackEnd.Of(new PassageName(part.Name, passage.Name))] : [];

        /// <summary>Openings on openings meet in one spot, so that none of them counts more than once.</summary>
        private void Join(List<StackEnd> above, List<StackEnd> below, string location, int via)
        {
            if (above.Count == 0 || below.Count == 0) return;
            if (above[0].IsPassage || below[0].IsPassage)
            {
                foreach (var a in above)
                {
                    foreach (var b in below) contacts.TryAdd((a, b), (location, via));
                }

                return;
            }

            var together = string.Join(' ', above.Concat(below).Select(end => end.Opening));
            if (!met.Add(together)) return;
            meetings.Add(location);
            var spot = StackEnd.OfMeeting(meetings.Count - 1);
            foreach (var a in above) contacts.Add((a, spot), (location, via));
            foreach (var b in below) contacts.Add((spot, b), (location, via));
        }

        public void FindBlanks()
        {
            foreach (var location in locations)
            {
                var above = upper.GetValueOrDefault(location);
                var below = lower.GetValueOrDefault(location);
                if (above is not null && below is not null)
                    BlankBySheet(location, above, below);
                else if (above is not null)
                    BlankByCasting(location, above, upperCasting.Part, lowerCasting);
                else
                    BlankByCasting(location, below!, lowerCasting.Part, upperCasting);
            }

            for (var i = 0; i < sheets.Length; i++)
                MissingSlots(i);
        }

        public StackedJoint Result()
        {
            var touching = ImmutableArray.CreateBuilder<StackContact>(contacts.Count);
            foreach (var ((a, b), (location, via)) in contacts) touching.Add(new StackContact(a, b, location, via));
            return new StackedJoint(joint, [.. openings], [.. meetings], touching.MoveToImmutable(), [.. blanks]);
        }

        private static (Part, Revision) Chosen(Assembly assembly, string name)
        {
            var index = assembly.Unit.Parts.IndexOf(assembly.Unit.FindPart(name)!);
            return (assembly.Unit.Parts[index], assembly.Revisions[index]);
        }

        private Dictionary<string, Passage> PassagesByLocation(Revision revision)
        {
            var map = new Dictionary<string, Passage>();
            foreach (var passage in revision.Passages)
            {
                foreach (var use in passage.Locations)
                {
                    if (use.Joint == joint.Name) map[use.Location] = passage;
                }
            }

            return map;
        }

        private void LayOpening(int sheet, Opening opening)
        {
            var area = opening.Shape.Area?.SquareMillimetres;
            var laid = new StackedOpening(
                sheet, sheets[sheet].Part.Name, sheets[sheet].Revision.Name, [.. opening.At.Select(at => at.Name)], opening.Shape,
                area ?? Defaults.OpeningArea, opening.Place);
            if (area is null)
                assumptions(Phrase.Of($"assumed {new Area(Defaults.OpeningArea)} for opening {laid.Element}: no size given"), opening.Place);
            Lay(sheet, laid);
        }

        private void Lay(int sheet, StackedOpening laid)
        {
            openings.Add(laid);
            foreach (var location in laid.Locations)
            {
                if (!open[sheet].TryGetValue(location, out var there)) open[sheet][location] = there = [];
                there.Add(openings.Count - 1);
            }
        }

        private void BlankBySheet(string location, Passage above, Passage below)
        {
            for (var i = 0; i < sheets.Length; i++)
            {
                if (open[i].ContainsKey(location)) continue;
                var (part, revision) = sheets[i];
                var except = revision.OpenExcept.FirstOrDefault(name => name.Name == location);
                blanks.Add(new Blank(
                    new PassageName(upperCasting.Part.Name, above.Name), new PassageName(lowerCasting.Part.Name, below.Name),
                    $"{part.Name}@{location}", part.Name, revision.Name, Blanked,
                    except.Name is null ? revision.Place : except.Place));
                return;
            }
        }

        /// <summary>A slot that another revision of the sheet has, and this one lacks, blanks what it would join.</summary>
        private void MissingSlots(int sheet)
        {
            var (part, revision) = sheets[sheet];
            foreach (var slot in part.Revisions.SelectMany(other => other.Openings))
            {
                if (slot.At.Length < 2) continue;
                var spanned = slot.At.Select(at => at.Name).ToList();
                if (revision.Openings.Any(own => spanned.TrueForAll(location => own.At.Any(at => at.Name == location)))) continue;
                var element = $"{part.Name}@{string.Join('-', spanned)}";
                if (blanks.Exists(blank => blank.Element == element)) continue;
                var met = new List<PassageName>();
                foreach (var location in spanned)
                {
                    Meet(upperCasting.Part, upper, location);
                    Meet(lowerCasting.Part, lower, location);
                }

                for (var i = 1; i < met.Count; i++)
                    blanks.Add(new Blank(met[0], met[i], element, part.Name, revision.Name, NoSlot, revision.Place));

                void Meet(Part casting, Dictionary<string, Passage> map, string location)
                {
                    if (map.TryGetValue(location, out var passage) && new PassageName(casting.Name, passage.Name) is var name && !met.Contains(name)) met.Add(name);
                }
            }
        }

        /// <summary>
        /// Solid metal opposite a passage is an answer only where another revision of that casting has a passage there
        /// that this revision still knows by name.
        /// </summary>
        private void BlankByCasting(string location, Passage passage, Part owner, (Part Part, Revision Revision) solid)
        {
            foreach (var other in solid.Part.Revisions)
            {
                var there = other.Passages.FirstOrDefault(
                    candidate => candidate.Locations.Any(use => use.Joint == joint.Name && use.Location == location));
                if (there is null) continue;
                var kept = solid.Revision.Passages.FirstOrDefault(candidate => candidate.Name == there.Name);
                if (kept is null) continue;
                blanks.Add(new Blank(
                    new PassageName(owner.Name, passage.Name), new PassageName(solid.Part.Name, kept.Name),
                    $"{solid.Part.Name}@{location}", solid.Part.Name, solid.Revision.Name, SolidMetal, kept.Place));
                return;
            }
        }
    }
}
