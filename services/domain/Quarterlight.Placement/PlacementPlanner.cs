using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>Everything one question is about.</summary>
/// <param name="Cabin">The car, worked out in space.</param>
/// <param name="NoiseCar">What the noise forecast needs to know of the car.</param>
/// <param name="Kit">What is in the bag.</param>
/// <param name="Scene">What is recorded.</param>
public sealed record PlacementTask(CabinGeometry Cabin, NoiseCar NoiseCar, Kit Kit, Scene Scene);

/// <summary>The room's front door: plans a scene and explains sites.</summary>
public static class PlacementPlanner
{
    /// <summary>Plans a scene.</summary>
    /// <exception cref="InvalidInputException"><see cref="PlacementRules.Validate"/> finds something.</exception>
    public static MountPlan Plan(PlacementTask task, PlacementOptions? options = null)
    {
        Refuse(task);
        using var run = new PlanRun(task, options ?? PlacementOptions.Default);
        return run.Plan();
    }

    /// <summary>Explains why a site was or was not chosen for a talker in a plan of the same task.</summary>
    /// <param name="task">The task that was planned.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="siteId">Site id of the cabin, or <see cref="BodyWorn.AnyId"/>, or a body-worn site's id.</param>
    /// <param name="talkerId">Talker id of the scene.</param>
    /// <param name="options">Tuning; null takes the defaults.</param>
    /// <exception cref="InvalidInputException">The task, the site id or the talker id is not valid.</exception>
    public static SiteExplanation Explain(PlacementTask task, MountPlan plan, string siteId, string talkerId, PlacementOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Refuse(task);
        using var run = new PlanRun(task, options ?? PlacementOptions.Default);
        return run.Explain(plan, siteId, talkerId);
    }

    private static void Refuse(PlacementTask task)
    {
        IReadOnlyList<Violation> violations = PlacementRules.Validate(task);
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }
    }
}
