using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Screens(Assembly assembly)
    {
        foreach (var (number, part, revision) in Fitted(assembly))
        {
            foreach (var screen in revision.Screens)
            {
                var name = $"{part.Name}.{screen.Name}";
                if (screen.Clogged < assembly.Unit.Faults.Clog) Fail(FaultKind.ScreenClogged, new ClogScreen(part.Name, screen, assembly.Unit.Faults.Clog));
                Fail(FaultKind.ScreenOut, new TearScreen(part.Name, screen));
                if (screen.Bypass is null) continue;
                Fail(FaultKind.BypassStuckOpen, new StickBypass(part.Name, screen, BypassStuck.Open));
                Fail(FaultKind.BypassStuckShut, new StickBypass(part.Name, screen, BypassStuck.Shut));

                void Fail(FaultKind kind, Change change) => Add(new Fault(kind, name, change.Text, screen.Place, 0, [change]), number);
            }
        }
    }
}
