using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Settling;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>Which reading would settle a finding of the build that is shown; null where nothing would.</summary>
public delegate Settlement? SettleAsk(Finding finding);
