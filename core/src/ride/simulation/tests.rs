use super::*;
use crate::catalogue::{TemplateId, template};
use crate::plan::Plan;
use crate::ride::road::RoadKind;
use crate::rider::{Day, Hand, Hands, Rider};

fn able(id: TemplateId) -> Plan {
    let mut plan = template(id).plan("Test");
    plan.rider = Rider {
        hands: Hands {
            left: Hand::does_all(None),
            right: Hand::does_all(None),
        },
        ..Rider::default()
    };
    plan
}

fn inputs(plan: &Plan, kind: RoadKind) -> Inputs {
    Inputs {
        road: Arc::new(Road::built_in(kind)),
        gearbox: Arc::new(Gearbox::of(plan).expect("it has gears")),
        grasp: Arc::new(Grasp::of(plan, plan.layout(), Day::Usual)),
        habits: Habits::default(),
        conditions: Conditions::AS_TOLD,
    }
}

#[test]
fn explore() {
    use crate::Vocabulary;
    for kind in RoadKind::ALL {
        let plan = able(TemplateId::RoadPlain);
        let mut sim = Simulation::new(&inputs(&plan, *kind));
        let start = std::time::Instant::now();
        sim.advance(10_000_000);
        let took = start.elapsed();
        let ride = sim.ride();
        println!(
            "{kind}: {:.1} km {:.0} min {:.1} km/h walked {:.0} presses/h {:.0} front {} missing {} unacc {:.5} {took:?} events {}",
            ride.distance / 1000.0,
            ride.seconds / 60.0,
            ride.distance / ride.seconds * 3.6,
            ride.walked,
            ride.load.per_hour(ride.load.presses()),
            ride.load.front,
            ride.load.missing,
            ride.energy.unaccounted(),
            ride.events.len()
        );
        println!("{:?}", ride.load);
        println!("{:?}", ride.energy);
        let mut counts = [0; 8];
        for e in &ride.events {
            let i = match e.what {
                What::Press { .. } => 0,
                What::Pull { .. } => 1,
                What::Delay { .. } => 2,
                What::Move { .. } => 3,
                What::Off { .. } => 4,
                What::Wanted { .. } => 5,
                What::Missing { .. } => 6,
                What::NoBrake => 7,
            };
            counts[i] += 1;
        }
        println!("{counts:?}");
        for e in ride.events.iter().take(0) {
            if let What::Press {
                function,
                from,
                to,
                held,
                clash,
                ..
            } = e.what
            {
                println!(
                    "  {:.0}s {:.0}m {:.1}km/h {function} {from}->{to} held {held} {clash}",
                    e.time,
                    e.at,
                    e.speed * 3.6
                );
            } else {
                println!(
                    "  {:.0}s {:.0}m {:.1} {:?}",
                    e.time,
                    e.at,
                    e.speed * 3.6,
                    e.what
                );
            }
        }
    }
    panic!("look");
}
